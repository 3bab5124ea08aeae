import { DomainError } from './errors.ts'

/**
 * No length, load, mass or count of an engine shop lies beyond these in any unit that a formula takes: whatever does is a
 * slip, and would run over the largest figure a double holds.
 */
export const LARGEST = 1e18
const SMALLEST = 1 / LARGEST

/**
 * Passes a number on when it lies between two bounds, both allowed: a formula is never used outside its
 * range.
 * @throws DomainError `value-out-of-range` with the field, also for NaN
 */
export function inRange(value: number, least: number, greatest: number, field: string): number {
  if (value >= least && value <= Math.min(greatest, LARGEST)) return value
  const range = greatest === Infinity ? `at least ${least}` : `between ${least} and ${greatest}`
  throw new DomainError('value-out-of-range', `This must be ${range}, not ${value}.`, field)
}

/**
 * Passes a number on when it is greater than zero and finite.
 * @throws DomainError `value-out-of-range` with the field, also for NaN
 */
export function positive(value: number, field: string): number {
  if (value >= SMALLEST && value <= LARGEST) return value
  throw new DomainError('value-out-of-range', `This must be a figure greater than zero, not ${value}.`, field)
}

/**
 * Passes a number on when it is a figure at all, of either sign.
 * @throws DomainError `value-out-of-range` with the field, also for NaN
 */
export function figure(value: number, field: string): number {
  if (value >= -LARGEST && value <= LARGEST) return value
  throw new DomainError('value-out-of-range', `This must be a figure, not ${value}.`, field)
}
