import type { Verdict } from '../judging/verdict.ts'

/** What a forecast rests on: readings alone, some drawings' figures, nothing but those, or not even those. */
export const forecastBases = ['measured', 'partly-nominal', 'nominal', 'unknown'] as const
export type ForecastBasis = (typeof forecastBases)[number]

/**
 * Where a fit stands, the gravest first: it will not go together; it is measured and not proven; a machine that is
 * still ahead on the route cuts it right; it is forecast from a drawing or not at all; it fits.
 */
export const fitStandings = ['conflict', 'not-proven', 'to-be-cut', 'not-measured', 'fits'] as const
export type FitStanding = (typeof fitStandings)[number]

/** One fit of the sheet, forecast. */
export interface TrialFitLine {
  readonly requirement: string
  readonly title: string
  readonly position: number | null
  readonly standing: FitStanding
  readonly basis: ForecastBasis
  /** Judged as the bench would; where nominal figures stand in, without a guard band: a drawing has no gauge. */
  readonly verdict: Verdict
  /** What was taken from the drawing, in words: feature and figure. */
  readonly assumed: readonly string[]
  /** How dear the remedy is, cheapest first; null without one. Ranks are common practice, no source. */
  readonly remedyRank: number | null
  /** The step that will cut it right; null unless it is still to be cut. */
  readonly cutAt: string | null
}

/** The answer to *will it go together?* */
export interface TrialFit {
  /** By standing, the gravest first; conflicts with the cheapest remedy first. */
  readonly lines: readonly TrialFitLine[]
  readonly counts: Readonly<Record<FitStanding, number>>
}

/** What the judge cannot see of a job: how far its route is, and what the owner lets pass. */
export interface TrialFitContext {
  /** Features that a machine of a step ahead will cut, by `featureKey`, with the title of that step. */
  readonly stillToCut: ReadonlyMap<string, string>
  /** Whether a live concession covers a verdict. */
  readonly isConceded: (verdict: Verdict) => boolean
}
