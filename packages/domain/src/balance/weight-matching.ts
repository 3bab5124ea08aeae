import { DomainError } from '../errors.ts'
import { inRange } from '../in-range.ts'

/** What comes off each part to match the lightest, and which one that is. Milligrams. */
export interface WeightMatch {
  readonly target: number
  readonly takeOff: readonly number[]
}

/**
 * Matches a set to its lightest part: metal only comes off.
 * @throws DomainError `value-out-of-range` for an empty set or a negative mass
 * @formula weight-matching
 */
export function matchToLightest(masses: readonly number[]): WeightMatch {
  if (masses.length === 0) {
    throw new DomainError('value-out-of-range', 'A set has one part at least.', 'masses')
  }
  for (const mass of masses) inRange(mass, 0, 1e9, 'masses')
  const target = Math.min(...masses)
  return { target, takeOff: masses.map((mass) => mass - target) }
}
