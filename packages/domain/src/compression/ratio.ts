import { inRange, positive } from '../in-range.ts'
import { pistonDrop } from '../kinematics/slider-crank.ts'
import type { SliderCrank } from '../kinematics/slider-crank.ts'

/**
 * (swept + clearance volume) / clearance volume, both in one unit.
 * @formula compression-ratio
 */
export function compressionRatio(swept: number, clearance: number): number {
  return (positive(swept, 'swept') + positive(clearance, 'clearance')) / clearance
}

/**
 * The clearance volume that a ratio asks for, in the unit of the swept volume: swept / (ratio − 1).
 * @formula compression-ratio
 */
export function clearanceForRatio(swept: number, ratio: number): number {
  return positive(swept, 'swept') / (inRange(ratio, 1.001, 100, 'ratio') - 1)
}

/**
 * How far the piston still has to go up when the intake closes, in the crank's unit: its distance from top
 * centre.
 * @param closing intake closing after bottom centre, thousandths of a degree, at a stated lift: a card's
 *   figure at 0.050 in and one at seat lift give different ratios
 * @formula effective-ratio
 */
export function strokeAfterClosing(crank: SliderCrank, closing: number): number {
  return pistonDrop(crank, 180_000 + inRange(closing, 0, 180_000, 'closing'))
}

/**
 * Ratio over the stroke that is left when the intake closes: (swept · left / stroke + clearance) /
 * clearance.
 * @formula effective-ratio
 */
export function effectiveRatio(
  crank: SliderCrank,
  swept: number,
  clearance: number,
  closing: number,
): number {
  const left = strokeAfterClosing(crank, closing) / crank.stroke
  return (positive(swept, 'swept') * left + positive(clearance, 'clearance')) / clearance
}
