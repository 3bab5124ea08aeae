import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { capability } from './capability.ts'
import { fisherExceedance, studentProbability, studentQuantile } from './distributions.ts'
import { incompleteBeta, logGamma } from './incomplete-beta.ts'
import { mean, median, pooledStandardDeviation, standardDeviation } from './sample.ts'

const refused = expect.objectContaining({ code: 'value-out-of-range' })

describe('a sample', () => {
  it('needs values', () => {
    expect(() => mean([])).toThrow(refused)
    expect(() => standardDeviation([1])).toThrow(refused)
    expect(() => median([])).toThrow(refused)
    expect(() => pooledStandardDeviation([])).toThrow(refused)
  })
  it('has its middle value, of two the mean', () => {
    expect(median([9, 1, 5])).toBe(5)
    expect(median([4, 1, 2, 9])).toBe(3)
  })
  it('scatters no more when all of it is shifted', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 50 }), (values) => {
      const shifted = values.map((value) => value + 100_000_000)
      expect(standardDeviation(shifted)).toBeCloseTo(standardDeviation(values), 6)
      expect(mean(shifted)).toBeCloseTo(mean(values) + 100_000_000, 6)
    }))
  })
})

describe('special functions', () => {
  it('the gamma function is the factorial', () => {
    for (const [x, factorial] of [[1, 1], [5, 24], [11, 3_628_800]] as const) {
      expect(Math.exp(logGamma(x)) / factorial).toBeCloseTo(1, 12)
    }
    expect(Math.exp(logGamma(0.5))).toBeCloseTo(Math.sqrt(Math.PI), 12)
  })
  it('the incomplete beta function is symmetric, and known where it has a closed form', () => {
    const shape = fc.double({ min: 0.5, max: 40, noNaN: true })
    fc.assert(fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), shape, shape, (x, a, b) => {
      expect(incompleteBeta(x, a, b) + incompleteBeta(1 - x, b, a)).toBeCloseTo(1, 12)
      expect(incompleteBeta(x, a, 1)).toBeCloseTo(x ** a, 12)
    }))
    expect([incompleteBeta(0, 2, 3), incompleteBeta(1, 2, 3)]).toEqual([0, 1])
  })
  it('t with one degree of freedom is an arctangent, and its quantile undoes it', () => {
    fc.assert(fc.property(fc.double({ min: -50, max: 50, noNaN: true }), (t) => {
      expect(studentProbability(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 11)
      expect(studentQuantile(studentProbability(t, 7), 7)).toBeCloseTo(t, 5)
    }))
    expect(() => studentQuantile(1, 5)).toThrow(refused)
    expect(() => studentProbability(1, 0)).toThrow(refused)
  })
  it('an F of one numerator degree is the square of a t', () => {
    expect(fisherExceedance(4, 1, 10)).toBeCloseTo(2 * (1 - studentProbability(2, 10)), 12)
    expect(() => fisherExceedance(-1, 1, 10)).toThrow(refused)
  })
})

it('capability refuses limits out of order and no scatter', () => {
  expect(() => capability(1, 1, 2, 2)).toThrow(refused)
  expect(() => capability(1, 0, 0, 2)).toThrow(refused)
})
