import { fisherExceedance } from '../statistics/distributions.ts'
import { mean, sumOfSquares } from '../statistics/sample.ts'
import {
  appraiserMeans, partMeans, shapeOf, summarise, type GaugeStudy, type GaugeStudyResult,
} from './gauge-study.ts'

/** Above this probability an interaction is taken for chance and pooled into repeatability (AIAG). */
const poolingProbability = 0.25

/** A gauge study with its analysis of variance: sums of squares, and what became of the interaction. */
export interface VarianceStudyResult extends GaugeStudyResult {
  readonly sumsOfSquares: {
    readonly parts: number
    readonly appraisers: number
    readonly interaction: number
    readonly error: number
    readonly total: number
  }
  readonly interactionF: number
  readonly interactionPooled: boolean
}

/**
 * A gauge study by two-way analysis of variance with interaction (AIAG MSA). Negative variances count as
 * nothing.
 * @throws DomainError `value-out-of-range` for a partial study
 * @formula variance-study
 */
export function varianceStudy(study: GaugeStudy): VarianceStudyResult {
  const { appraisers, parts, trials } = shapeOf(study)
  const total = sumOfSquares(study.flat(2))
  const ofParts = appraisers * trials * sumOfSquares(partMeans(study))
  const ofAppraisers = parts * trials * sumOfSquares(appraiserMeans(study))
  const cells = trials * sumOfSquares(study.flat().map(mean))
  const interaction = Math.max(0, cells - ofParts - ofAppraisers)
  const error = study.flat().reduce((sum, cell) => sum + sumOfSquares(cell), 0)

  const interactionDegrees = (parts - 1) * (appraisers - 1)
  const errorDegrees = parts * appraisers * (trials - 1)
  const interactionF = error === 0 ? Infinity : interaction / interactionDegrees / (error / errorDegrees)
  const pooled = interactionF < Infinity
    && fisherExceedance(interactionF, interactionDegrees, errorDegrees) > poolingProbability

  const repeatability = pooled
    ? (interaction + error) / (interactionDegrees + errorDegrees)
    : error / errorDegrees
  const against = pooled ? repeatability : interaction / interactionDegrees
  const ofInteraction = pooled ? 0 : positive((against - repeatability) / trials)
  const reproducibility = positive((ofAppraisers / (appraisers - 1) - against) / (parts * trials))
  const between = positive((ofParts / (parts - 1) - against) / (appraisers * trials))
  return {
    ...summarise(Math.sqrt(repeatability), Math.sqrt(reproducibility + ofInteraction), Math.sqrt(between)),
    sumsOfSquares: { parts: ofParts, appraisers: ofAppraisers, interaction, error, total },
    interactionF,
    interactionPooled: pooled,
  }
}

function positive(variance: number): number {
  return Math.max(0, variance)
}
