import type { FeatureDefinition, ReaderUnit } from '@tenths/domain'
import { nanometresPer, roundToStep, sizeOf } from '@tenths/domain'

/** One point of a bore, as far from the size of all as it is. */
export interface MappedPoint {
  readonly station: string
  readonly axis: string
  readonly value: number
  /** In steps: tenths of a thousandth of an inch, or microns. */
  readonly deviation: number
}

export interface MappedBore {
  readonly title: string
  readonly points: readonly MappedPoint[]
}

export interface BoreMapDrawing {
  /** The mean of all readings to the nearest step, from which each deviation is taken. */
  readonly datum: number
  /** Largest deviation either way: what the deepest shade stands for. */
  readonly largest: number
  readonly stations: readonly string[]
  readonly axes: readonly string[]
  readonly bores: readonly MappedBore[]
}

/** What one step of a bore map is called. */
export const mapSteps: Record<ReaderUnit, { readonly length: number; readonly words: string }> = {
  inch: { length: nanometresPer.tenth, words: 'tenths (0.0001 in)' },
  millimetre: { length: nanometresPer.micron, words: 'microns (0.001 mm)' },
}

/**
 * The deviation of every point of several bores from their mean; null before anything is measured.
 * @param valueAt the counting value at a point, null while there is none
 */
export function mapBores(
  bores: readonly FeatureDefinition[], unit: ReaderUnit,
  valueAt: (bore: FeatureDefinition, point: string) => number | null,
): BoreMapDrawing | null {
  const read = bores.map((bore) => ({
    bore,
    points: bore.points.flatMap(({ key, station, axis }) => {
      const value = valueAt(bore, key)
      return value === null ? [] : [{ station, axis, value }]
    }),
  }))
  const values = read.flatMap(({ points }) => points.map(({ value }) => value))
  if (values.length === 0) return null
  const { mean, least, greatest } = sizeOf(values)
  const step = mapSteps[unit].length
  const datum = roundToStep(mean, step, 'half-even')
  const points = bores.flatMap((bore) => bore.points)
  return {
    datum,
    largest: Math.max(greatest - datum, datum - least) / step,
    stations: [...new Set(points.map(({ station }) => station))],
    axes: [...new Set(points.map(({ axis }) => axis))],
    bores: read.map(({ bore, points: ofBore }) => ({
      title: bore.title,
      points: ofBore.map((point) => ({ ...point, deviation: (point.value - datum) / step })),
    })),
  }
}

/** A deviation as a comparator would show it: `+3`, `−0.5`, `0`. */
export function deviationWords(deviation: number): string {
  const figure = String(Math.abs(Number(deviation.toFixed(1))))
  if (figure === '0') return '0'
  return deviation > 0 ? `+${figure}` : `−${figure}`
}
