import { describe, expect, it } from 'vitest'
import {
  arcsine, averageAndRange, capability, combine, coverageFactor, mean, pooledStandardDeviation, rectangular,
  rootSumSquare, standardDeviation, standardNormal, studentQuantile, varianceStudy,
} from '../../packages/domain/src/index.ts'

describe('GUM example H.1, an end gauge (JCGM 100:2008; inputs and 838, 32, 34 nm as in MSLNZ/GTC, docs GUM_H1)', () => {
  const standardLength = 50_000_623
  const difference = combine([
    { name: 'repeated observations', sensitivity: 1, standardUncertainty: 5.8, degreesOfFreedom: 24 },
    { name: 'random comparator effects', sensitivity: 1, standardUncertainty: 3.9, degreesOfFreedom: 5 },
    { name: 'systematic comparator effects', sensitivity: 1, standardUncertainty: 6.7, degreesOfFreedom: 8 },
  ])
  const expansion = 11.5e-6
  const contributions = [
    { name: 'standard', sensitivity: 1, standardUncertainty: 25, degreesOfFreedom: 18 },
    {
      name: 'difference', sensitivity: 1,
      standardUncertainty: difference.standardUncertainty, degreesOfFreedom: Math.floor(difference.degreesOfFreedom),
    },
    {
      name: 'temperature difference', sensitivity: -standardLength * expansion,
      standardUncertainty: rectangular(0.05), degreesOfFreedom: 2,
    },
    {
      name: 'expansion difference', sensitivity: standardLength * 0.1,
      standardUncertainty: rectangular(1e-6), degreesOfFreedom: 50,
    },
  ]
  const budget = combine(contributions)

  it('has a length of 50 000 838 nm, tolerance 0', () => {
    // both differences are nothing at their estimates, so l = ls + d
    expect(standardLength + 215).toBe(50_000_838)
  })
  it('has a comparison uncertainty of 9.682 nm with 25.4 degrees of freedom (computed; the GUM rounds to 9.7)', () => {
    expect(difference.standardUncertainty).toBeCloseTo(9.682, 3)
    expect(difference.degreesOfFreedom).toBeCloseTo(25.4, 0)
  })
  it('has its components, tolerance 0.01 nm', () => {
    const component = (name: string) => budget.components.find((entry) => entry.name === name)?.component
    expect(component('standard')).toBe(25)
    expect(Math.abs((component('temperature difference') ?? 0) - 16.599)).toBeLessThan(0.01)
    expect(Math.abs((component('expansion difference') ?? 0) - 2.886_79)).toBeLessThan(0.01)
  })
  it('has a combined uncertainty of 31.664 nm with 16.75 degrees of freedom, tolerance 0.005 and 0.05', () => {
    expect(Math.abs(budget.standardUncertainty - 31.664)).toBeLessThan(0.005)
    expect(Math.abs(budget.degreesOfFreedom - 16.75)).toBeLessThan(0.05)
  })
  it('expands to U99 = 92.5 nm with t(16) = 2.9208, tolerance 1 nm and 5e-5', () => {
    const k = coverageFactor(0.99, budget.degreesOfFreedom)
    expect(Math.abs(k - 2.9208)).toBeLessThan(5e-5)
    expect(Math.abs(k * budget.standardUncertainty - 92.5)).toBeLessThan(1)
  })
  it('has 33.81 nm with the second-order terms, tolerance 0.02 nm', () => {
    const temperature = rootSumSquare(0.2, arcsine(0.5))
    const secondOrder = [
      standardLength * rectangular(1e-6) * temperature, standardLength * rectangular(2e-6) * rectangular(0.05),
    ]
    expect(Math.abs(rootSumSquare(budget.standardUncertainty, ...secondOrder) - 33.81)).toBeLessThan(0.02)
  })
})

describe('Student’s t, two-sided 95 % and 99 % (tables in common use, from memory), tolerance 5e-4', () => {
  it.each([[0.975, 1, 12.706], [0.975, 5, 2.571], [0.975, 10, 2.228], [0.975, 30, 2.042], [0.995, 5, 4.032], [0.995, 10, 3.169]])(
    't%f(%d) is %f', (probability, degrees, t) => {
      expect(Math.abs(studentQuantile(probability, degrees) - t)).toBeLessThan(5e-4)
    })
})

/** AIAG MSA data: appraiser, trial, ten parts (read on an R&R form with the manual’s data). */
const rows: readonly (readonly (readonly number[])[])[] = [
  [
    [0.29, -0.56, 1.34, 0.47, -0.8, 0.02, 0.59, -0.31, 2.26, -1.36],
    [0.41, -0.68, 1.17, 0.5, -0.92, -0.11, 0.75, -0.2, 1.99, -1.25],
    [0.64, -0.58, 1.27, 0.64, -0.84, -0.21, 0.66, -0.17, 2.01, -1.31],
  ],
  [
    [0.08, -0.47, 1.19, 0.01, -0.56, -0.2, 0.47, -0.63, 1.8, -1.68],
    [0.25, -1.22, 0.94, 1.03, -1.2, 0.22, 0.55, 0.08, 2.12, -1.62],
    [0.07, -0.68, 1.34, 0.2, -1.28, 0.06, 0.83, -0.34, 2.19, -1.5],
  ],
  [
    [0.04, -1.38, 0.88, 0.14, -1.46, -0.29, 0.02, -0.46, 1.77, -1.49],
    [-0.11, -1.13, 1.09, 0.2, -1.07, -0.67, 0.01, -0.56, 1.45, -1.77],
    [-0.15, -0.96, 0.67, 0.11, -1.45, -0.49, 0.21, -0.49, 1.87, -2.16],
  ],
]
const study = rows.map((trials) => (trials[0] ?? []).map((_, part) => trials.map((trial) => trial[part] ?? Number.NaN)))
const range = (values: readonly number[]) => Math.max(...values) - Math.min(...values)

describe('AIAG gauge study, 10 parts, 3 people, 3 trials', () => {
  it('has the form’s ranges and means, tolerance 5e-5', () => {
    const ranges = study.map((parts) => mean(parts.map(range)))
    expect(ranges.map((value) => value.toFixed(4))).toEqual(['0.1840', '0.5130', '0.3280'])
    expect(study.map((parts) => mean(parts.flat()).toFixed(4))).toEqual(['0.1903', '0.0683', '-0.2543'])
  })
  it('by average and range, tolerance 5e-4 (the manual rounds R̄ first; its figures from memory)', () => {
    const result = averageAndRange(study)
    const expected = { repeatability: 0.20188, reproducibility: 0.22963, gauge: 0.30575, parts: 1.10456, total: 1.1461, share: 0.2668 }
    for (const [name, value] of Object.entries(expected)) {
      expect(Math.abs(result[name as keyof typeof expected] - value), name).toBeLessThan(5e-4)
    }
    expect(result.distinctCategories).toBe(5)
  })
  it('by analysis of variance: sums of squares, tolerance 5e-6 (computed)', () => {
    const { sumsOfSquares, interactionF, interactionPooled } = varianceStudy(study)
    expect(sumsOfSquares.parts).toBeCloseTo(88.361_93, 5)
    expect(sumsOfSquares.appraisers).toBeCloseTo(3.167_26, 5)
    expect(sumsOfSquares.interaction).toBeCloseTo(0.358_98, 5)
    expect(sumsOfSquares.error).toBeCloseTo(2.758_93, 5)
    expect(sumsOfSquares.total).toBeCloseTo(94.647_11, 5)
    expect(interactionF).toBeCloseTo(0.434, 3)
    expect(interactionPooled).toBe(true)
  })
  it('by analysis of variance: components, tolerance 5e-7 (computed)', () => {
    const result = varianceStudy(study)
    expect(result.repeatability ** 2).toBeCloseTo(0.039_973, 6)
    expect(result.reproducibility ** 2).toBeCloseTo(0.051_455, 6)
    expect(result.parts ** 2).toBeCloseTo(1.086_447, 6)
    expect(result.gauge).toBeCloseTo(0.302_372, 6)
    expect(result.total).toBeCloseTo(1.085_3, 4)
    expect(result.share).toBeCloseTo(0.2786, 4)
    expect(result.share ** 2).toBeCloseTo(0.0776, 4)
    expect(result.distinctCategories).toBe(4)
  })
})

describe('NIST', () => {
  it('e-Handbook 2.4.4.4: pooled repeatability 0.102897 with 300 degrees of freedom, tolerance 5e-7', () => {
    const squares = [0.481_15, 0.692_09, 0.484_83, 1.217_52, 0.300_76]
    const pooled = pooledStandardDeviation(squares.map((sumOfSquares) => ({ sumOfSquares, degreesOfFreedom: 60 })))
    expect(pooled).toBeCloseTo(0.102_897, 6)
  })
  it('e-Handbook 6.1.6: Cp 1.0, Cpu 0.6667, Cpl 1.3333, Cpk 0.6667 (from memory; arithmetic certain)', () => {
    const result = capability(16, 2, 8, 20)
    expect(result.cp).toBe(1)
    expect(result.upper).toBeCloseTo(2 / 3, 12)
    expect(result.lower).toBeCloseTo(4 / 3, 12)
    expect(result.cpk).toBeCloseTo(2 / 3, 12)
  })
  it.each([[0.5, 133_600, 50], [1, 2_700, 1], [1.33, 66, 0.5], [1.67, 0.55, 0.01], [2, 0.002, 5e-5]])(
    'Cp %f leaves %f parts per million outside (docs.ifs.com; printed rounded, tolerance %f)', (cp, partsPerMillion, tolerance) => {
      expect(Math.abs(2 * standardNormal(-3 * cp) * 1e6 - partsPerMillion)).toBeLessThan(tolerance)
    })
  // StRD: a first value, then pairs just below and above it; means read in public libraries’ test suites, s and data from memory
  it.each([
    ['NumAcc1', [10_000_001, 10_000_003, 10_000_002], 10_000_002, 1],
    ['NumAcc2', alternating(1.2, 0.1), 1.2, 0.1],
    ['NumAcc3', alternating(1_000_000.2, 0.1), 1_000_000.2, 0.1],
    ['NumAcc4', alternating(10_000_000.2, 0.1), 10_000_000.2, 0.1],
  ] as const)('StRD %s: mean and standard deviation survive large values, tolerance 1e-8 (1e-7 where doubles hold no more)', (name, values, average, deviation) => {
    expect(mean(values)).toBeCloseTo(average, 8)
    expect(Math.abs(standardDeviation(values) - deviation)).toBeLessThan(name === 'NumAcc4' ? 1e-7 : 1e-8)
  })
})

function alternating(centre: number, step: number): number[] {
  return [centre, ...Array.from({ length: 1_000 }, (_, index) => centre + (index % 2 === 0 ? -step : step))]
}
