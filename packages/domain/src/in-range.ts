import { DomainError } from './errors.ts'

/**
 * Passes a number on when it lies between two bounds, both allowed: a formula is never used outside its
 * range.
 * @throws DomainError `value-out-of-range` with the field, also for NaN
 */
export function inRange(value: number, least: number, greatest: number, field: string): number {
  if (value >= least && value <= greatest) return value
  const range = greatest === Infinity ? `at least ${least}` : `between ${least} and ${greatest}`
  throw new DomainError('value-out-of-range', `This must be ${range}, not ${value}.`, field)
}

/**
 * Passes a number on when it is greater than zero and finite.
 * @throws DomainError `value-out-of-range` with the field, also for NaN
 */
export function positive(value: number, field: string): number {
  if (value > 0 && value < Infinity) return value
  throw new DomainError('value-out-of-range', `This must be greater than zero, not ${value}.`, field)
}
