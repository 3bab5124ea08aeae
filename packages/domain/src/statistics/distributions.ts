import { DomainError } from '../errors.ts'
import { incompleteBeta } from './incomplete-beta.ts'

/**
 * Probability that Student's t with ν degrees of freedom lies at or below t.
 * @formula student-t
 */
export function studentProbability(t: number, degreesOfFreedom: number): number {
  requireDegrees(degreesOfFreedom)
  const square = t * t
  // near the middle from the small end of the beta function: ν/(ν + t²) would round a small t away
  const tail = square < degreesOfFreedom
    ? (1 - incompleteBeta(square / (degreesOfFreedom + square), 0.5, degreesOfFreedom / 2)) / 2
    : incompleteBeta(degreesOfFreedom / (degreesOfFreedom + square), degreesOfFreedom / 2, 0.5) / 2
  return t > 0 ? 1 - tail : tail
}

/**
 * The t that Student's t stays at or below with this probability: t0.995(16) is 2.92.
 * @throws DomainError `value-out-of-range` unless 0 < probability < 1 and ν > 0
 * @formula student-t
 */
export function studentQuantile(probability: number, degreesOfFreedom: number): number {
  requireDegrees(degreesOfFreedom)
  if (!(probability > 0 && probability < 1)) {
    throw new DomainError('value-out-of-range', 'A probability lies between nothing and one.')
  }
  if (probability < 0.5) return 0 - studentQuantile(1 - probability, degreesOfFreedom)
  let low = 0
  let high = 1
  while (studentProbability(high, degreesOfFreedom) < probability && high < 1e12) high *= 2
  for (let halving = 0; halving < 100; halving += 1) {
    const middle = (low + high) / 2
    if (studentProbability(middle, degreesOfFreedom) < probability) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/**
 * Probability that an F ratio of variances is exceeded by chance.
 * @formula fisher-f
 */
export function fisherExceedance(f: number, numerator: number, denominator: number): number {
  requireDegrees(numerator)
  requireDegrees(denominator)
  if (!(f >= 0)) throw new DomainError('value-out-of-range', 'A ratio of variances is not negative.')
  return incompleteBeta(denominator / (denominator + numerator * f), denominator / 2, numerator / 2)
}

function requireDegrees(degrees: number): void {
  if (!(degrees > 0)) throw new DomainError('value-out-of-range', 'Degrees of freedom are greater than nothing.')
}
