import { DomainError } from '../errors.ts'
import { round } from '../exact/rounding.ts'

/** One value at its place along (station) and around (axis) a bore or journal. */
export interface FormReading {
  readonly station: string
  readonly axis: string
  readonly value: number
}

/**
 * The convention of this program. Others exist and give other figures for the same readings, so its name
 * stands wherever the figures do. Two points cannot see an odd number of lobes.
 */
export const formConvention = {
  name: 'Two-point, section by section',
  outOfRound: 'Out-of-round: the largest difference between axes at one depth.',
  taper: 'Taper: the largest difference between depths on one axis.',
} as const

export interface Size {
  readonly mean: number
  readonly least: number
  readonly greatest: number
}

/**
 * Mean (rounded to a whole base unit, half to even), least and greatest.
 * @throws DomainError `point-unknown` when empty
 * @formula mean-size
 */
export function sizeOf(values: readonly number[]): Size {
  if (values.length === 0) throw new DomainError('point-unknown', 'A size needs one reading at least.')
  let sum = 0
  let least = Infinity
  let greatest = -Infinity
  for (const value of values) {
    sum += value
    if (value < least) least = value
    if (value > greatest) greatest = value
  }
  return { mean: round(sum / values.length, 'half-even'), least, greatest }
}

/** A form figure and where it was found: the station of an out-of-round, the axis of a taper. */
export interface FormFigure {
  readonly value: number
  readonly at: string
}

/**
 * Largest difference between axes at one depth; null when no depth was read on two axes. Base unit, on
 * diameter.
 * @formula out-of-round
 */
export function outOfRound(readings: readonly FormReading[]): FormFigure | null {
  return largestSpread(readings, 'station')
}

/**
 * Largest difference between depths on one axis; null when no axis was read at two depths. Base unit, on
 * diameter.
 * @formula taper
 */
export function taper(readings: readonly FormReading[]): FormFigure | null {
  return largestSpread(readings, 'axis')
}

function largestSpread(readings: readonly FormReading[], along: 'station' | 'axis'): FormFigure | null {
  const groups = new Map<string, { least: number; greatest: number; count: number }>()
  for (const reading of readings) {
    const group = groups.get(reading[along])
    if (group === undefined) {
      groups.set(reading[along], { least: reading.value, greatest: reading.value, count: 1 })
    } else {
      group.least = Math.min(group.least, reading.value)
      group.greatest = Math.max(group.greatest, reading.value)
      group.count += 1
    }
  }
  let largest: FormFigure | null = null
  for (const [at, { least, greatest, count }] of groups) {
    if (count > 1 && (largest === null || greatest - least > largest.value)) largest = { value: greatest - least, at }
  }
  return largest
}
