import { DomainError } from '../errors.ts'
import { figure, positive } from '../in-range.ts'

/** How well a process fits between its limits. */
export interface Capability {
  /** Width of the limits over six standard deviations. */
  readonly cp: number
  readonly upper: number
  readonly lower: number
  /** The worse of upper and lower: how many three-sigma widths the mean keeps from the nearer limit. */
  readonly cpk: number
}

/**
 * Cp and Cpk of a process with a mean and a standard deviation between two limits (NIST e-Handbook 6.1.6).
 * @throws DomainError `value-out-of-range` unless low < high and the standard deviation is positive
 * @formula capability
 */
export function capability(mean: number, standardDeviation: number, low: number, high: number): Capability {
  positive(standardDeviation, 'standardDeviation')
  for (const value of [mean, low, high]) figure(value, 'limits')
  if (!(low < high)) {
    throw new DomainError('value-out-of-range', 'Capability needs two limits in order.')
  }
  const upper = (high - mean) / (3 * standardDeviation)
  const lower = (mean - low) / (3 * standardDeviation)
  return { cp: (high - low) / (6 * standardDeviation), upper, lower, cpk: Math.min(upper, lower) }
}
