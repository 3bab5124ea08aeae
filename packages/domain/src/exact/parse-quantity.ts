import { DomainError } from '../errors.ts'
import { readNumber } from './number-text.ts'
import { quantityUnits, type QuantityUnit, type QuantityUnitName } from './quantity-unit.ts'
import { roundRatio } from './round-ratio.ts'

const withSuffix = /^(.*?[\d.,])\s*([^\d\s.,/+\-−].*)?$/s

/**
 * Reads a typed torque, angle, mass, pressure, unbalance or force into whole base units, rounded once, half to even: a
 * pound-foot is no whole number of millinewton metres, so what was typed is worth keeping beside it.
 * @param unitName the unit meant when the text names none; a named one must be of the same quantity
 * @throws DomainError `number-unreadable`, or `value-out-of-range` past 2^50 base units
 */
export function parseQuantity(text: string, unitName: QuantityUnitName): number {
  const meant = quantityUnits[unitName]
  const match = withSuffix.exec(text.trim())
  const suffix = match?.[2]
  const unit = suffix === undefined ? meant : unitNamed(suffix, meant)
  const number = match && readNumber(match[1] ?? '')
  if (!number || unit === undefined) {
    throw new DomainError('number-unreadable', `“${text.trim().slice(0, 24)}” is not a figure in ${meant.symbol}.`)
  }
  return roundRatio(
    number.numerator * unit.perUnit.numerator,
    number.denominator * unit.perUnit.denominator,
    'half-even',
  )
}

function unitNamed(suffix: string, meant: QuantityUnit): QuantityUnit | undefined {
  const wanted = suffix.trim().toLowerCase()
  const units: readonly QuantityUnit[] = Object.values(quantityUnits)
  return units.find(({ quantity, symbol, spellings }) =>
    quantity === meant.quantity && (symbol.toLowerCase() === wanted || spellings.includes(wanted)))
}
