import { DomainError } from '../errors.ts'
import { LARGEST } from '../in-range.ts'
import { readableStep, type GaugeResolution } from '../exact/resolution.ts'

/**
 * Root of the sum of squares: how independent uncertainties add (JCGM 100:2008, 5.1.2, sensitivity 1). Base
 * unit of the parts.
 * @formula root-sum-square
 */
export function rootSumSquare(...parts: readonly number[]): number {
  if (parts.some((part) => !(part >= 0 && part <= LARGEST))) {
    throw new DomainError('value-out-of-range', 'An uncertainty is a number that is not negative.')
  }
  return Math.hypot(...parts)
}

/** What is known of a gauge's uncertainty, in the base unit of what it measures. */
export interface GaugeUncertainty {
  readonly resolution: GaugeResolution
  /** Expanded uncertainty on its certificate, and the k it was stated with. */
  readonly calibration: { readonly expanded: number; readonly coverageFactor: number } | null
  /** Standard deviation of repeated readings by this shop's people. */
  readonly repeatability: number | null
}

/**
 * Standard uncertainty u of one reading: resolution as a rectangle of one readable step (step/√12),
 * calibration U/k, repeatability s, root of the sum of squares (JCGM 100:2008, 4.3 and F.2.2.1).
 * @formula standard-uncertainty
 */
export function standardUncertainty({ resolution, calibration, repeatability }: GaugeUncertainty): number {
  const calibrated = calibration === null ? 0 : calibration.expanded / calibration.coverageFactor
  return rootSumSquare(readableStep(resolution) / Math.sqrt(12), calibrated, repeatability ?? 0)
}

/**
 * Expanded uncertainty U = k·u.
 * @formula expanded-uncertainty
 */
export function expandedUncertainty(standard: number, coverageFactor: number): number {
  if (!(coverageFactor > 0 && coverageFactor <= LARGEST)) {
    throw new DomainError('value-out-of-range', 'A coverage factor is greater than nothing.')
  }
  return coverageFactor * rootSumSquare(standard)
}
