import { round } from '../exact/rounding.ts'
import { assign } from './assignment.ts'
import type { Assignment } from './assignment.ts'

/**
 * Shafts to holes so that the clearance farthest from the target is as near as can be, then all together:
 * pistons to bores, pins to pistons, shells to journals. Sizes in nanometres; costs are distances from the
 * target.
 * @returns for each hole the index of its shaft
 * @throws DomainError `value-out-of-range` unless there are as many shafts as holes, 16 at most
 */
export function pairByClearance(
  holes: readonly number[],
  shafts: readonly number[],
  target: number,
): Assignment {
  return assign(holes.map((hole) => shafts.map((shaft) => Math.abs(hole - shaft - target))))
}

/**
 * Two sets of parts paired so that the pairs weigh alike, rods and pistons for example: each pair's
 * distance from the mean pair, the worst first. Masses in whole milligrams; the mean is rounded, half to
 * even.
 * @formula weight-pairing
 */
export function pairByWeight(heavy: readonly number[], light: readonly number[]): Assignment {
  const total = [...heavy, ...light].reduce((sum, mass) => sum + mass, 0)
  const mean = heavy.length === 0 ? 0 : round(total / heavy.length, 'half-even')
  return assign(heavy.map((one) => light.map((other) => Math.abs(one + other - mean))))
}
