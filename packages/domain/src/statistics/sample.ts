import { DomainError } from '../errors.ts'
import { figure } from '../in-range.ts'

/**
 * Arithmetic mean, by deviations from the first value so that large values with a small scatter keep their
 * figures.
 * @throws DomainError `value-out-of-range` for an empty sample
 * @formula mean
 */
export function mean(values: readonly number[]): number {
  const [first] = values
  if (first === undefined) throw new DomainError('value-out-of-range', 'A mean needs one value at least.')
  let sum = 0
  for (const value of values) sum += figure(value, 'values') - figure(first, 'values')
  return first + sum / values.length
}

/**
 * Sum of squared deviations from the mean, corrected for the rounding of the mean itself.
 * @formula standard-deviation
 */
export function sumOfSquares(values: readonly number[]): number {
  const centre = mean(values)
  let squares = 0
  let rest = 0
  for (const value of values) {
    squares += (value - centre) ** 2
    rest += value - centre
  }
  return squares - (rest * rest) / values.length
}

/**
 * Standard deviation of a sample (n − 1).
 * @throws DomainError `value-out-of-range` for fewer than two values
 * @formula standard-deviation
 */
export function standardDeviation(values: readonly number[]): number {
  if (values.length < 2) throw new DomainError('value-out-of-range', 'A scatter needs two values at least.')
  return Math.sqrt(sumOfSquares(values) / (values.length - 1))
}

/**
 * The middle value, or the mean of the two in the middle.
 * @throws DomainError `value-out-of-range` when empty
 * @formula median
 */
export function median(values: readonly number[]): number {
  for (const value of values) figure(value, 'values')
  const sorted = [...values].sort((one, other) => one - other)
  const upper = sorted[Math.floor(sorted.length / 2)]
  const lower = sorted[Math.floor((sorted.length - 1) / 2)]
  if (upper === undefined || lower === undefined) {
    throw new DomainError('value-out-of-range', 'A median needs one value at least.')
  }
  return (lower + upper) / 2
}

/**
 * Several samples' scatter as one: root of all squares over all degrees of freedom.
 * @formula pooled-standard-deviation
 */
export function pooledStandardDeviation(
  samples: readonly { readonly sumOfSquares: number; readonly degreesOfFreedom: number }[],
): number {
  let squares = 0
  let degrees = 0
  for (const sample of samples) {
    squares += figure(sample.sumOfSquares, 'sumOfSquares')
    degrees += sample.degreesOfFreedom
  }
  if (!(degrees > 0 && squares >= 0)) throw new DomainError('value-out-of-range', 'A pooled scatter needs a degree of freedom.')
  return Math.sqrt(squares / degrees)
}
