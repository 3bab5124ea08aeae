import { DomainError } from '../errors.ts'
import { inRange, LARGEST, positive } from '../in-range.ts'

/**
 * How much warmer than the shaft a hub must be to slide on, in °C: (interference + assembly clearance) / (α
 * · d). Lengths in one unit; expansion for each °C.
 * @throws DomainError `value-out-of-range` for anything not positive
 * @formula heating-rise
 */
export function heatingRise(
  diameter: number,
  interference: number,
  clearance: number,
  expansion: number,
): number {
  const open = positive(interference, 'interference') + inRange(clearance, 0, Infinity, 'clearance')
  return open / (positive(expansion, 'expansion') * positive(diameter, 'diameter'))
}

/**
 * How long a heated part stays above the temperature that it must have, in the unit of the time constant:
 * τ · ln((from − air) / (to − air)), Newton's law of cooling. The time constant is found by timing one part.
 * @throws DomainError `value-out-of-range` unless from ≥ to > air
 * @formula cooling-time
 */
export function timeLeft(timeConstant: number, from: number, to: number, air: number): number {
  if (!(from >= to && to > air && from <= LARGEST && air >= -LARGEST)) {
    throw new DomainError(
      'value-out-of-range',
      'Temperatures must fall: heated, still warm enough, air.',
      'to',
    )
  }
  return positive(timeConstant, 'timeConstant') * (Math.log(from - air) - Math.log(to - air))
}
