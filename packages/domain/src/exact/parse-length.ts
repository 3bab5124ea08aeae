import { DomainError } from '../errors.ts'
import type { Nanometres } from './length.ts'
import { nanometresOf } from './length.ts'
import { lengthSuffixes, nanometresPer, type LengthUnit } from './length-unit.ts'
import { readNumber } from './number-text.ts'

/** Text split into its number and the unit it ends in, if it names one. */
const withSuffix = /^(.*?[\d.,])\s*([^\d\s.,/+\-−][^\d\s]*)?$/s

/**
 * Reads a typed length without passing through a float: `4.0312`, `101,6 mm`, `4 1/32`, `+0.5 thou`, `−3
 * tenths`.
 * @param text what was typed
 * @param unit the unit meant when the text names none
 * @returns whole nanometres, never rounded
 * @throws DomainError `length-unreadable` for text that is no length, `length-not-exact` for a part of a
 *   nanometre (1/128 in), `value-out-of-range` past the safe whole numbers
 */
export function parseLength(text: string, unit: LengthUnit): Nanometres {
  const match = withSuffix.exec(text.trim())
  const suffix = match?.[2]
  const typedUnit = suffix === undefined ? unit : lengthSuffixes[suffix.toLowerCase()]
  const number = match && readNumber(match[1] ?? '')
  if (!number || typedUnit === undefined) {
    throw new DomainError(
      'length-unreadable',
      `“${shorten(text)}” is not a length. Type a figure such as 4.0312 or 101.6 mm.`,
    )
  }
  const product = number.numerator * BigInt(nanometresPer[typedUnit])
  if (product % number.denominator !== 0n) {
    throw new DomainError(
      'length-not-exact',
      `“${shorten(text)}” is not a whole number of nanometres. Type the figure that the gauge shows, as a decimal.`,
    )
  }
  const length = product / number.denominator
  if (length > BigInt(Number.MAX_SAFE_INTEGER) || length < BigInt(Number.MIN_SAFE_INTEGER)) {
    throw new DomainError('value-out-of-range', `“${shorten(text)}” is longer than anything measured here.`)
  }
  return nanometresOf(Number(length))
}

function shorten(text: string): string {
  const trimmed = text.trim()
  return trimmed.length > 24 ? `${trimmed.slice(0, 24)}…` : trimmed
}
