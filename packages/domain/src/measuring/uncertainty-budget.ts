import { DomainError } from '../errors.ts'
import { studentQuantile } from '../statistics/distributions.ts'
import { rootSumSquare } from './uncertainty.ts'

/**
 * Standard uncertainty of a value known only to lie within ± a half width: a/√3 (JCGM 100:2008, 4.3.7).
 * @formula interval-uncertainty
 */
export function rectangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(3)
}

/**
 * The same for a value that swings between its ends as a sine does: a/√2 (arcsine distribution).
 * @formula interval-uncertainty
 */
export function arcsine(halfWidth: number): number {
  return halfWidth / Math.SQRT2
}

/**
 * One contribution to an uncertainty: how the result answers to it, how uncertain it is, how well that is
 * known.
 */
export interface Contribution {
  readonly name: string
  /** Change of the result for one unit of change. */
  readonly sensitivity: number
  readonly standardUncertainty: number
  /** Infinity where the uncertainty itself is taken as certain. */
  readonly degreesOfFreedom: number
}

export interface Budget {
  readonly components: readonly { readonly name: string; readonly component: number }[]
  readonly standardUncertainty: number
  /** Effective degrees of freedom (Welch–Satterthwaite); Infinity when no contribution limits them. */
  readonly degreesOfFreedom: number
}

/**
 * Combines independent contributions: u² = Σ(c·u)², ν = u⁴ / Σ((c·u)⁴/ν) (JCGM 100:2008, 5.1.2 and G.4.1).
 * @throws DomainError `value-out-of-range` for a negative uncertainty or degrees of freedom not above nothing
 * @formula uncertainty-budget
 */
export function combine(contributions: readonly Contribution[]): Budget {
  const components = contributions.map(({ name, sensitivity, standardUncertainty }) =>
    ({ name, component: Math.abs(sensitivity) * standardUncertainty }))
  const standard = rootSumSquare(...components.map(({ component }) => component))
  let share = 0
  contributions.forEach(({ degreesOfFreedom }, index) => {
    if (!(degreesOfFreedom > 0)) {
      throw new DomainError('value-out-of-range', 'Degrees of freedom are greater than nothing.')
    }
    share += (components[index]?.component ?? 0) ** 4 / degreesOfFreedom
  })
  return {
    components,
    standardUncertainty: standard,
    degreesOfFreedom: share === 0 ? Infinity : standard ** 4 / share,
  }
}

/**
 * The k that covers a two-sided probability with ν effective degrees of freedom, truncated to a whole number
 * as the GUM does (JCGM 100:2008, G.4.1). Beyond 10 000 it is that of 10 000, which no longer differs from
 * the normal k.
 * @formula coverage-factor
 */
export function coverageFactor(probability: number, degreesOfFreedom: number): number {
  return studentQuantile((1 + probability) / 2, Math.min(Math.floor(degreesOfFreedom), 10_000))
}
