import { DomainError } from '../errors.ts'
import { round } from '../exact/rounding.ts'
import { inRange } from '../in-range.ts'

/** What moves with one rod, in milligrams. */
export interface RodMasses {
  /** Big end of the rod, with its bolts. */
  readonly bigEnd: number
  /** One pair of shells. */
  readonly shells: number
  readonly smallEnd: number
  readonly piston: number
  readonly pin: number
  readonly rings: number
  readonly retainers: number
}

/**
 * Bobweight for one crankpin in whole milligrams: all that turns, oil included, and a share of all that
 * goes up and down, summed over the rods of the pin: Σ(big end + shells) + oil + factor × Σ(small end +
 * piston + pin + rings + retainers). Half is usual for a 90° V8 (published by balancing shops); other
 * engines use other factors.
 * @param factor share of the reciprocating mass in thousandths: 500 is a half
 * @param oil in milligrams, for the whole pin
 * @throws DomainError `value-out-of-range` for no rods, a negative mass or a factor over 1
 * @formula bobweight
 */
export function bobweight(rods: readonly RodMasses[], factor: number, oil: number): number {
  if (rods.length === 0) {
    throw new DomainError('value-out-of-range', 'A crankpin carries one rod at least.', 'rods')
  }
  inRange(factor, 0, 1_000, 'factor')
  const masses = rods.map(massesOf)
  const rotating = sum(masses.map((each) => each.rotating)) + mass(oil, 'oil')
  return rotating + round((sum(masses.map((each) => each.reciprocating)) * factor) / 1_000, 'half-even')
}

function massesOf(rod: RodMasses): { rotating: number; reciprocating: number } {
  const of = (...parts: readonly (keyof RodMasses)[]) => sum(parts.map((part) => mass(rod[part], part)))
  return {
    rotating: of('bigEnd', 'shells'),
    reciprocating: of('smallEnd', 'piston', 'pin', 'rings', 'retainers'),
  }
}

function mass(value: number, field: string): number {
  return inRange(value, 0, 1e9, field)
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
