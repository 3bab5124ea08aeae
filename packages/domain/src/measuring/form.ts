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

/** Least and greatest of some values. */
export interface Span {
  readonly least: number
  readonly greatest: number
}

export interface Size extends Span {
  readonly mean: number
}

/**
 * Least and greatest.
 * @throws DomainError `point-unknown` when empty
 */
export function spanOf(values: readonly number[]): Span {
  refuseNone(values)
  let least = Infinity
  let greatest = -Infinity
  for (const value of values) {
    if (value < least) least = value
    if (value > greatest) greatest = value
  }
  return { least, greatest }
}

/**
 * The mean, rounded to a whole base unit, half to even.
 * @throws DomainError `point-unknown` when empty
 * @formula mean-size
 */
export function meanOf(values: readonly number[]): number {
  refuseNone(values)
  let sum = 0
  for (const value of values) sum += value
  return round(sum / values.length, 'half-even')
}

/**
 * Mean, least and greatest.
 * @throws DomainError `point-unknown` when empty
 */
export function sizeOf(values: readonly number[]): Size {
  return { mean: meanOf(values), ...spanOf(values) }
}

function refuseNone(values: readonly number[]): void {
  if (values.length === 0) throw new DomainError('point-unknown', 'A size needs one reading at least.')
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
  for (const { [along]: section, value } of readings) {
    const group = groups.get(section)
    if (group === undefined) {
      groups.set(section, { least: value, greatest: value, count: 1 })
    } else {
      group.least = Math.min(group.least, value)
      group.greatest = Math.max(group.greatest, value)
      group.count += 1
    }
  }
  let largest: FormFigure | null = null
  for (const [at, { least, greatest, count }] of groups) {
    if (count > 1 && (largest === null || greatest - least > largest.value)) largest = { value: greatest - least, at }
  }
  return largest
}
