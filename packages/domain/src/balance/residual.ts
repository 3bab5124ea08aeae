import { inRange, positive } from '../in-range.ts'

/** Radians a second in one turn a minute. */
const PER_TURN = (2 * Math.PI) / 60

/**
 * Permissible residual eccentricity in micrometres, which is also gram millimetres for each kilogram:
 * e = 1000 · G / Ω, with the balance quality grade G in mm/s (ISO 21940-11).
 * @formula permissible-unbalance
 */
export function permissibleEccentricity(grade: number, turnsPerMinute: number): number {
  return (
    (1_000 * inRange(grade, 0.4, 4_000, 'grade')) / (positive(turnsPerMinute, 'turnsPerMinute') * PER_TURN)
  )
}

/**
 * Permissible residual unbalance of the whole rotor in gram millimetres: U = m · e (ISO 21940-11); mass in
 * kilograms.
 * @formula permissible-unbalance
 */
export function permissibleUnbalance(mass: number, grade: number, turnsPerMinute: number): number {
  return positive(mass, 'mass') * permissibleEccentricity(grade, turnsPerMinute)
}
