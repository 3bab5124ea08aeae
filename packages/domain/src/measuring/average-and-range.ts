import { DomainError } from '../errors.ts'
import { mean } from '../statistics/sample.ts'
import {
  appraiserMeans, partMeans, shapeOf, summarise, type GaugeStudy, type GaugeStudyResult,
} from './gauge-study.ts'

/**
 * 1/d2* by number of trials, of appraisers and of parts (AIAG MSA; those for 3, 3 and 10 read, the rest from
 * memory).
 */
const perTrials: Readonly<Record<number, number>> = { 2: 0.8862, 3: 0.5908 }
const perAppraisers: Readonly<Record<number, number>> = { 2: 0.7071, 3: 0.5231 }
const perParts: Readonly<Record<number, number>> = {
  2: 0.7071, 3: 0.5231, 4: 0.4467, 5: 0.403, 6: 0.3742, 7: 0.3534, 8: 0.3375, 9: 0.3249, 10: 0.3146,
}

const rangeOf = (values: readonly number[]): number => Math.max(...values) - Math.min(...values)

/**
 * A gauge study by average and range (AIAG MSA): repeatability R̄·K1; reproducibility √((X̄diff·K2)² −
 * EV²/(n·r)); parts Rp·K3.
 * @throws DomainError `value-out-of-range` outside 2 to 3 trials and people and 2 to 10 parts, or for a
 *   partial study
 * @formula average-and-range
 */
export function averageAndRange(study: GaugeStudy): GaugeStudyResult {
  const { appraisers, parts, trials } = shapeOf(study)
  const k1 = perTrials[trials]
  const k2 = perAppraisers[appraisers]
  const k3 = perParts[parts]
  if (k1 === undefined || k2 === undefined || k3 === undefined) {
    throw new DomainError(
      'value-out-of-range',
      'Average and range is tabled for two or three people, two or three trials, and two to ten parts.',
    )
  }
  const repeatability = mean(study.flat().map(rangeOf)) * k1
  const between = (rangeOf(appraiserMeans(study)) * k2) ** 2 - repeatability ** 2 / (parts * trials)
  return summarise(repeatability, Math.sqrt(Math.max(0, between)), rangeOf(partMeans(study)) * k3)
}
