import fc from 'fast-check'
import {
  cumulativeStdNormalProbability, mean as theirMean, median as theirMedian, sampleStandardDeviation, sampleVariance,
} from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { mean, median, standardDeviation, standardNormal, sumOfSquares } from '../../packages/domain/src/index.ts'

// Independent oracle: simple-statistics. Tolerance 1e-9 of the largest value: doubles, summed in another order.
const samples = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 2, maxLength: 60 })

describe('a statistics library agrees', () => {
  it('on mean, median, sum of squares and standard deviation', () => {
    fc.assert(fc.property(samples, (values) => {
      const room = 1e-9 * Math.max(1, ...values.map(Math.abs))
      expect(Math.abs(mean(values) - theirMean(values))).toBeLessThanOrEqual(room)
      expect(Math.abs(median(values) - theirMedian(values))).toBeLessThanOrEqual(room)
      expect(Math.abs(standardDeviation(values) - sampleStandardDeviation(values))).toBeLessThanOrEqual(room)
      const squares = sampleVariance(values) * (values.length - 1)
      expect(Math.abs(sumOfSquares(values) - squares)).toBeLessThanOrEqual(1e-9 * Math.max(1, squares))
    }))
  })
  it('on Φ, tolerance 6e-5: it reads a table of four decimals', () => {
    fc.assert(fc.property(fc.integer({ min: -300, max: 300 }), (hundredths) => {
      const z = hundredths / 100
      expect(Math.abs(standardNormal(z) - cumulativeStdNormalProbability(z))).toBeLessThan(6e-5)
    }))
  })
})
