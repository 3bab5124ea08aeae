import { DomainError } from '../errors.ts'
import { standardNormal } from '../judging/conformity.ts'

const ENTRIES = 4_096

/**
 * Factors of a log-normal duration with mean 1 and the given relative standard deviation, at 4,096 equally likely
 * quantiles: drawing one at random costs one look-up. σ² = ln(1 + spread²), factor = exp(σz), scaled to mean 1 exactly.
 * That hands-on times are log-normal is common practice in scheduling; no source for this shop's own times.
 * @throws DomainError `value-out-of-range` unless 0 ≤ spread ≤ 2
 * @formula duration-spread
 */
export function spreadTable(spread: number): Float64Array {
  if (!(spread >= 0 && spread <= 2)) {
    throw new DomainError('value-out-of-range', `A spread of ${spread} is not between 0 and 2.`, 'spread')
  }
  const sigma = Math.sqrt(Math.log1p(spread * spread))
  const table = Float64Array.from({ length: ENTRIES }, (_, entry) => Math.exp(sigma * quantile((entry + 0.5) / ENTRIES)))
  const mean = table.reduce((sum, factor) => sum + factor, 0) / ENTRIES
  return table.map((factor) => factor / mean)
}

/** z with Φ(z) = probability, by halving: exact to the last figures and run once a table. */
function quantile(probability: number): number {
  let below = -9
  let above = 9
  for (let step = 0; step < 60; step += 1) {
    const middle = (below + above) / 2
    if (standardNormal(middle) < probability) below = middle
    else above = middle
  }
  return (below + above) / 2
}
