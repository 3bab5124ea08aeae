import { DomainError } from '../errors.ts'

declare const nanometres: unique symbol

/**
 * A length as a whole number of nanometres. One inch is 25 400 000 nm and a tenth (0.0001 in) 2 540 nm, so inches to
 * five decimals and microns are both exact and no verdict hangs on a binary fraction.
 */
export type Nanometres = number & { readonly [nanometres]: true }

/**
 * Nanometres in one inch: exact by definition of the inch (25.4 mm, international yard and pound agreement of 1959).
 * @formula inch
 */
export const NANOMETRES_PER_INCH = 25_400_000
/** Nanometres in one millimetre. */
export const NANOMETRES_PER_MILLIMETRE = 1_000_000
/** Nanometres in 0.0001 inch, the trade's "tenth". */
export const NANOMETRES_PER_TENTH = 2_540

/**
 * Brands a whole number as a length.
 * @throws DomainError `length-not-exact` when it is not a safe integer.
 */
export function nanometresOf(value: number): Nanometres {
  if (!Number.isSafeInteger(value)) {
    throw new DomainError('length-not-exact', `${value} is not a whole number of nanometres.`)
  }
  return value as Nanometres
}

/** The sum of lengths, exact. @throws DomainError `length-not-exact` past the safe range. */
export function add(...lengths: readonly Nanometres[]): Nanometres {
  let sum = 0
  for (const length of lengths) sum += length
  return nanometresOf(sum)
}

/** `minuend` less `subtrahend`, exact. */
export function subtract(minuend: Nanometres, subtrahend: Nanometres): Nanometres {
  return nanometresOf(minuend - subtrahend)
}
