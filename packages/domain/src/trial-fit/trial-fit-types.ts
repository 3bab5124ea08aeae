import type { Verdict } from '../judging/verdict.ts'

/** What a forecast rests on: readings alone, some drawings' figures, nothing but those, or not even those. */
export const forecastBases = ['measured', 'partly-nominal', 'nominal', 'unknown'] as const
export type ForecastBasis = (typeof forecastBases)[number]

/** One fit of the sheet, forecast. */
export interface TrialFitLine {
  readonly requirement: string
  readonly title: string
  readonly position: number | null
  readonly basis: ForecastBasis
  /** Judged as the bench would; where nominal figures stand in, without a guard band: a drawing has no gauge. */
  readonly verdict: Verdict
  /** What was taken from the drawing, in words: feature and figure. */
  readonly assumed: readonly string[]
  /** How dear the remedy is, cheapest first; null without one. Ranks are common practice, no source. */
  readonly remedyRank: number | null
}

/** The answer to *will it go together?* */
export interface TrialFit {
  /** Conflicts, cheapest remedy first; then what is not proven, what is unknown, what fits. */
  readonly lines: readonly TrialFitLine[]
  readonly conflicts: number
  readonly unknown: number
  readonly fits: number
}
