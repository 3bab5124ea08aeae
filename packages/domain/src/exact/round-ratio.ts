import { DomainError } from '../errors.ts'
import { round, type RoundingMode } from './rounding.ts'

const largestQuotient = 2n ** 50n

/**
 * Rounds an exact ratio to a whole number by the package's one rounding function. The remainder only decides
 * on which side of a half the ratio lies, so that no binary fraction takes part in the choice.
 * @param denominator positive
 * @throws DomainError `value-out-of-range` past 2^50
 */
export function roundRatio(numerator: bigint, denominator: bigint, mode: RoundingMode): number {
  let quotient = numerator / denominator
  let remainder = numerator % denominator
  if (remainder < 0n) {
    quotient -= 1n
    remainder += denominator
  }
  if (quotient > largestQuotient || quotient < -largestQuotient) {
    throw new DomainError('value-out-of-range', 'This value is too large to be kept.')
  }
  const whole = Number(quotient)
  if (remainder === 0n) return round(whole, mode)
  const twice = 2n * remainder
  if (twice === denominator) return round(whole + 0.5, mode)
  return round(whole + (twice < denominator ? 0.25 : 0.75), mode)
}
