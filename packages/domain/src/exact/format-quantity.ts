import { DomainError } from '../errors.ts'
import { fixed } from './format-length.ts'
import { quantityUnits, type QuantityUnitName } from './quantity-unit.ts'
import { roundRatio } from './round-ratio.ts'
import type { RoundingMode } from './rounding.ts'

/**
 * A figure of any quantity but length in the reader's unit with fixed decimals, without the unit's symbol.
 * @param value whole base units
 */
export function formatQuantity(
  value: number, unitName: QuantityUnitName, decimals: number, mode: RoundingMode,
): string {
  if (!Number.isSafeInteger(value)) {
    throw new DomainError('value-out-of-range', `${value} is not a whole number of base units.`)
  }
  const { perUnit } = quantityUnits[unitName]
  const scaled = roundRatio(
    BigInt(value) * 10n ** BigInt(decimals) * perUnit.denominator,
    perUnit.numerator,
    mode,
  )
  return fixed(BigInt(scaled), decimals)
}

/** As formatQuantity, followed by the unit's symbol. */
export function formatQuantityWithUnit(
  value: number, unitName: QuantityUnitName, decimals: number, mode: RoundingMode,
): string {
  const { symbol } = quantityUnits[unitName]
  return `${formatQuantity(value, unitName, decimals, mode)}${symbol === '°' ? '' : ' '}${symbol}`
}
