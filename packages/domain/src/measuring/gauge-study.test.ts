import { describe, expect, it } from 'vitest'
import { averageAndRange } from './average-and-range.ts'
import { combine, coverageFactor, rectangular } from './uncertainty-budget.ts'
import { varianceStudy } from './variance-study.ts'

const refused = expect.objectContaining({ code: 'value-out-of-range' })
/** Two people, two parts, two trials, and a strong interaction: one reads part 2 low. */
const crossed = [[[10, 10.1], [20, 20.1]], [[10, 10.1], [17, 17.1]]]

describe('a gauge study', () => {
  it('is refused while a reading is missing or there is too little of anything', () => {
    for (const study of [averageAndRange, varianceStudy]) {
      expect(() => study([])).toThrow(refused)
      expect(() => study([[[1, 2], [3, 4]]])).toThrow(refused)
      expect(() => study([[[1, 2], [3, 4]], [[1, 2], [3]]])).toThrow(refused)
      expect(() => study([[[1, 2], [3, 4]], [[1, 2], [3, Number.NaN]]])).toThrow(refused)
    }
  })
  it('is refused when every reading repeats exactly: the gauge shows too little', () => {
    expect(() => averageAndRange([[[1, 1], [2, 2]], [[1, 1], [2, 2]]])).toThrow(refused)
  })
  it('by average and range is refused past its tables', () => {
    const eleven = Array.from({ length: 11 }, (_, part) => [part, part + 0.1])
    expect(() => averageAndRange([eleven, eleven])).toThrow(refused)
    expect(varianceStudy([eleven, eleven]).repeatability).toBeCloseTo(0.1 / Math.SQRT2, 1)
  })
  it('keeps an interaction that is no chance apart from repeatability', () => {
    const result = varianceStudy(crossed)
    expect(result.interactionPooled).toBe(false)
    expect(result.repeatability).toBeCloseTo(Math.sqrt(0.005), 12)
    // interaction alone: mean squares 4.5 against error 0.005, two trials
    expect(result.reproducibility ** 2).toBeCloseTo((4.5 - 0.005) / 2, 9)
    const { parts, appraisers, interaction, error, total } = result.sumsOfSquares
    expect(parts + appraisers + interaction + error).toBeCloseTo(total, 9)
  })
})

describe('an uncertainty budget', () => {
  const one = { name: 'a', sensitivity: -2, standardUncertainty: 3, degreesOfFreedom: 5 }
  it('of one contribution is that contribution, with its degrees of freedom', () => {
    expect(combine([one])).toEqual({
      components: [{ name: 'a', component: 6 }], standardUncertainty: 6, degreesOfFreedom: 5 })
  })
  it('has no limit to its degrees of freedom when no contribution limits them', () => {
    expect(combine([{ ...one, degreesOfFreedom: Infinity }]).degreesOfFreedom).toBe(Infinity)
    expect(coverageFactor(0.95, Infinity)).toBeCloseTo(1.96, 3)
  })
  it('refuses what cannot be', () => {
    expect(() => combine([{ ...one, standardUncertainty: -1 }])).toThrow(refused)
    expect(() => combine([{ ...one, degreesOfFreedom: 0 }])).toThrow(refused)
    expect(() => coverageFactor(0.95, 0.5)).toThrow(refused)
    expect(rectangular(3)).toBeCloseTo(Math.sqrt(3), 12)
  })
})
