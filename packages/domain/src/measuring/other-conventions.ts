import { DomainError } from '../errors.ts'
import { formConvention, type FormReading } from './form.ts'

/**
 * Published ways to turn the same readings of a bore into figures, by what they do. Only the first is judged by here;
 * the others are for comparing with a sheet that uses them, and give other figures for the same bore.
 */
export const formConventions = {
  'section-by-section': formConvention,
  'largest-to-largest': {
    name: 'Two-point, largest to largest',
    outOfRound: 'Out-of-round: the largest on one axis at any depth less the smallest on the other at any depth.',
    taper: 'Taper: the larger of two axes at the top less the larger of two at the bottom.',
  },
  'reference-circle': {
    name: 'Radial, from a reference circle',
    outOfRound: 'Roundness: between the two circles about one centre that enclose the section, on radius.',
    taper: 'None: one section says nothing of the next.',
  },
} as const

/** One figure from the largest (or smallest) of some readings. @throws DomainError `point-unknown` when there are none */
function extreme(values: readonly number[], pick: (...values: number[]) => number, what: string): number {
  if (values.length === 0) throw new DomainError('point-unknown', `There is no reading ${what}.`)
  return pick(...values)
}

/**
 * Taper as T = max(top) − max(bottom), over the axes at each end; negative when the bottom is larger. Base unit, on
 * diameter. As an outboard maker's service manual defines it (read: Yamaha FX160, p. 5-93).
 * @throws DomainError `point-unknown` when an end was not read
 * @formula taper-largest-to-largest
 */
export function taperLargestToLargest(readings: readonly FormReading[], top: string, bottom: string): number {
  const at = (end: string) => readings.filter(({ station }) => station === end).map(({ value }) => value)
  return extreme(at(top), Math.max, `at ${top}`) - extreme(at(bottom), Math.max, `at ${bottom}`)
}

/**
 * Out-of-round as R = max(one axis) − min(the other), over all depths: taper is in it. Base unit, on diameter. The same
 * manual's definition.
 * @throws DomainError `point-unknown` when an axis was not read
 * @formula out-of-round-largest-to-smallest
 */
export function outOfRoundLargestToSmallest(readings: readonly FormReading[], oneAxis: string, otherAxis: string): number {
  const on = (axis: string) => readings.filter((reading) => reading.axis === axis).map(({ value }) => value)
  return extreme(on(oneAxis), Math.max, `on ${oneAxis}`) - extreme(on(otherAxis), Math.min, `on ${otherAxis}`)
}
