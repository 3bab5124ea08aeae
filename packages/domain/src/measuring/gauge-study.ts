import { DomainError } from '../errors.ts'
import { mean } from '../statistics/sample.ts'

/**
 * Readings of a gauge study: appraiser → part → trials. Every appraiser measures every part as often as the
 * others.
 */
export type GaugeStudy = readonly (readonly (readonly number[])[])[]

export interface StudyShape {
  readonly appraisers: number
  readonly parts: number
  readonly trials: number
}

/** What a study says of a gauge and those who use it; standard deviations in the readings' unit. */
export interface GaugeStudyResult {
  readonly repeatability: number
  readonly reproducibility: number
  /** Repeatability and reproducibility together. */
  readonly gauge: number
  readonly parts: number
  readonly total: number
  /** Gauge over total, 0 to 1: under 0.1 good, to 0.3 with reservations (AIAG). */
  readonly share: number
  /** How many kinds of part the gauge can tell apart, whole: five or more are asked for (AIAG). */
  readonly distinctCategories: number
}

/** @throws DomainError `value-out-of-range` for fewer than two of anything, or a reading that is missing */
export function shapeOf(study: GaugeStudy): StudyShape {
  const appraisers = study.length
  const parts = study[0]?.length ?? 0
  const trials = study[0]?.[0]?.length ?? 0
  const isFull = study.every((byPart) =>
    byPart.length === parts && byPart.every((values) => values.length === trials && values.every(Number.isFinite)))
  if (!isFull || appraisers < 2 || parts < 2 || trials < 2) {
    throw new DomainError(
      'value-out-of-range',
      'A gauge study needs two people, two parts and two trials at least, and every reading of them.',
    )
  }
  return { appraisers, parts, trials }
}

/** Puts the standard deviations of a study together. */
export function summarise(repeatability: number, reproducibility: number, parts: number): GaugeStudyResult {
  const gauge = Math.hypot(repeatability, reproducibility)
  const total = Math.hypot(gauge, parts)
  if (!(gauge > 0)) {
    throw new DomainError('value-out-of-range', 'All readings repeat exactly: this gauge is too coarse to be studied so.')
  }
  return {
    repeatability, reproducibility, gauge, parts, total,
    share: gauge / total,
    distinctCategories: Math.floor((Math.SQRT2 * parts) / gauge),
  }
}

/** Mean of each part over all who measured it. */
export function partMeans(study: GaugeStudy): number[] {
  return (study[0] ?? []).map((_, part) => mean(study.flatMap((byPart) => byPart[part] ?? [])))
}

/** Mean of each appraiser over all parts. */
export function appraiserMeans(study: GaugeStudy): number[] {
  return study.map((byPart) => mean(byPart.flat()))
}
