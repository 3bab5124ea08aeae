import { describe, expect, it } from 'vitest'
import {
  averageAndRange, capability, combine, coverageFactor, fisherExceedance, mean, median, pairByClearance, assign,
  probabilityOfConformity, rectangular, rootSumSquare, standardDeviation, standardNormal, studentQuantile, sumOfSquares, type Limits,
} from '../../packages/domain/src/index.ts'

describe('NIST StRD PiDigits, certified values from memory, tolerance 1e-12: what a double keeps of 5000 sums', () => {
  const digits = [...piDigits(5_000)].map(Number)
  // mean, s and r1 all fit π's digits with one 8 between neighbours that sum to 7 written as a 3, of which this is the first
  const certified = digits.map((digit, index) => (index === 18 ? 3 : digit))
  it('the digits worked out here begin 3, 1, 4 … and the one that is changed is an 8', () => {
    expect(digits.slice(0, 10)).toEqual([3, 1, 4, 1, 5, 9, 2, 6, 5, 3])
    expect(digits).toHaveLength(5_000)
    expect(digits.slice(17, 20)).toEqual([3, 8, 4])
  })
  it('that data has mean 4.5348, s 2.86733906028871 and r1 −0.00355099287237972', () => {
    expect(Math.abs(mean(certified) - 4.534_8)).toBeLessThan(1e-12)
    expect(Math.abs(standardDeviation(certified) - 2.867_339_060_288_71)).toBeLessThan(1e-12)
    const centre = mean(certified)
    const centred = certified.map((digit) => digit - centre)
    const products = centred.reduce((sum, value, index) => sum + value * (centred[index + 1] ?? 0), 0)
    expect(Math.abs(products / sumOfSquares(certified) + 0.003_550_992_872_379_72)).toBeLessThan(1e-12)
  })
  it('π’s own first 5000 digits have mean 4.5358 and s 2.8676755521876 (computed in Python with whole numbers)', () => {
    expect(Math.abs(mean(digits) - 4.535_8)).toBeLessThan(1e-12)
    expect(Math.abs(standardDeviation(digits) - 2.867_675_552_187_6)).toBeLessThan(1e-12)
  })
})

describe('GUM (JCGM 100:2008, from memory)', () => {
  const temperatures = [
    96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95, 101.11, 101.2,
    101.57, 101.84, 102.36, 102.72,
  ]
  it('4.4.3: twenty temperatures have mean 100.14, s 1.49 and s/√n 0.33 °C, tolerance 0.005: the last figures', () => {
    expect(Math.abs(mean(temperatures) - 100.145)).toBeLessThan(0.005)
    expect(Math.abs(standardDeviation(temperatures) - 1.49)).toBeLessThan(0.005)
    expect(Math.abs(standardDeviation(temperatures) / Math.sqrt(20) - 0.33)).toBeLessThan(0.005)
  })
  it('4.4.5: known only to lie in 96 to 104 °C has u 2.3 °C, tolerance 0.05', () => {
    expect(Math.abs(rectangular(4) - 2.3)).toBeLessThan(0.05)
  })
  it('4.3.4: a resistor stated ± 129 µΩ at 99 % has u 50 µΩ, tolerance 0.5 µΩ', () => {
    expect(Math.abs(129 / coverageFactor(0.99, Infinity) - 50)).toBeLessThan(0.5)
  })
  it('F.2.2.1: a display’s step δ gives 0.29 δ, tolerance 0.005', () => {
    expect(Math.abs(rectangular(0.5) - 0.29)).toBeLessThan(0.005)
  })
  it('G.4.1: 0.25, 0.57 and 0.82 % with 9, 4 and 14 degrees make 1.03 % with 19.0, and U95 2.2 %, tolerance half a last figure', () => {
    const part = (standardUncertainty: number, degreesOfFreedom: number) =>
      ({ name: String(standardUncertainty), sensitivity: 1, standardUncertainty, degreesOfFreedom })
    const { standardUncertainty, degreesOfFreedom } = combine([part(0.25, 9), part(0.57, 4), part(0.82, 14)])
    expect(Math.abs(standardUncertainty - 1.03)).toBeLessThan(0.005)
    expect(Math.abs(degreesOfFreedom - 19)).toBeLessThan(0.05)
    expect(Math.abs(coverageFactor(0.95, degreesOfFreedom) * standardUncertainty - 2.2)).toBeLessThan(0.05)
  })
  // 68.27, 95.45 and 99.73 % are one, two and three sigmas; tolerance 0.005, 235.80 to its own two decimals
  it.each([
    [1, 1.84, 12.71, 13.97, 63.66, 235.8], [2, 1.32, 4.3, 4.53, 9.92, 19.21], [5, 1.11, 2.57, 2.65, 4.03, 5.51],
    [10, 1.05, 2.23, 2.28, 3.17, 3.96], [20, 1.03, 2.09, 2.13, 2.85, 3.42], [50, 1.01, 2.01, 2.05, 2.68, 3.16],
  ])('table G.2, %d degrees of freedom: %f, %f, %f, %f, %f', (degrees, ...row) => {
    const probabilities = [0.682_689_492_137, 0.95, 0.954_499_736_104, 0.99, 0.997_300_203_937]
    for (const [index, printed] of row.entries()) {
      expect(Math.abs(coverageFactor(probabilities[index] ?? 0, degrees) - printed)).toBeLessThan(0.0051)
    }
  })
})

describe('JCGM 106:2012, examples of conformance probability (from memory), tolerance 0.005: two decimals are printed', () => {
  const between = (low: number | null, high: number | null): Limits =>
    ({ low, high, target: null, adviceLow: null, adviceHigh: null })
  it.each([
    ['a breakdown voltage of −5.47 V, u 0.05, limit −5.40 above', -5.47, 0.05, between(null, -5.4), 0.92],
    ['a viscosity of 13.6 mm²/s, u 1.8, 12.5 to 16.3', 13.6, 1.8, between(12.5, 16.3), 0.66],
    ['a strength of 507 kPa, u 10, limit 490 below', 507, 10, between(490, null), 0.96],
  ])('%s', (_, value, u, limits, probability) => {
    expect(Math.abs(probabilityOfConformity(value, value, limits, u) - probability)).toBeLessThan(0.005)
  })
  it('a guard band of one U (k = 2) leaves at most 2.3 % of a false acceptance, tolerance 0.05 %', () => {
    expect(Math.abs(1 - probabilityOfConformity(-2, -2, between(null, 0), 1) - 0.023)).toBeLessThan(5e-4)
  })
})

describe('tables of distributions (NIST e-Handbook 1.3.6.7, from memory; recomputed with SciPy), tolerance 5.1e-4: three decimals', () => {
  it.each([
    [0.95, 10, 1.812], [0.975, 15, 2.131], [0.975, 20, 2.086], [0.99, 10, 2.764], [0.995, 20, 2.845], [0.9, 1, 3.078],
    [0.95, 120, 1.658], [0.975, 2, 4.303], [0.999, 10, 4.144],
  ])('t %f (%d) is %f', (probability, degrees, t) => {
    expect(Math.abs(studentQuantile(probability, degrees) - t)).toBeLessThan(5.1e-4)
    expect(studentQuantile(1 - probability, degrees)).toBeCloseTo(-studentQuantile(probability, degrees), 9)
  })
  it.each([
    [0.05, 1, 10, 4.965], [0.05, 5, 10, 3.326], [0.05, 10, 10, 2.978], [0.01, 5, 10, 5.636], [0.05, 2, 20, 3.493],
    [0.01, 1, 5, 16.258], [0.05, 3, 4, 6.591],
  ])('F %f (%d, %d) is %f', (exceeded, numerator, denominator, f) => {
    expect(fisherExceedance(f - 5.1e-4, numerator, denominator)).toBeGreaterThan(exceeded)
    expect(fisherExceedance(f + 5.1e-4, numerator, denominator)).toBeLessThan(exceeded)
  })
  it.each([[0.05, 1, 3.841], [0.05, 10, 18.307], [0.01, 5, 15.086], [0.05, 30, 43.773]])(
    'χ² %f (%d) is %f: F with endless degrees in its denominator', (exceeded, degrees, square) => {
      expect(fisherExceedance((square - 1e-3) / degrees, degrees, 1e9)).toBeGreaterThan(exceeded)
      expect(fisherExceedance((square + 1e-3) / degrees, degrees, 1e9)).toBeLessThan(exceeded)
    })
  it.each([[1.282, 0.9], [1.645, 0.95], [1.96, 0.975], [2.326, 0.99], [2.576, 0.995], [3.09, 0.999]])(
    'z %f stands at %f', (z, probability) => {
      expect(standardNormal(z - 5.1e-4)).toBeLessThan(probability)
      expect(standardNormal(z + 5.1e-4)).toBeGreaterThan(probability)
    })
})

describe('small samples', () => {
  it('2 4 4 4 5 5 7 9 has mean 5, median 4.5, s √(32/7) (an encyclopaedia’s example, from memory; its σ is 2), tolerance 1e-15', () => {
    const values = [2, 4, 4, 4, 5, 5, 7, 9]
    expect([mean(values), median(values)]).toEqual([5, 4.5])
    expect(Math.abs(standardDeviation(values) - Math.sqrt(32 / 7))).toBeLessThan(1e-15)
  })
  it('Cp 1.33 and Cpk 1.00 for 24.000 ± 0.040 mm with mean 24.010 and s 0.010 (computed), tolerance 1e-9', () => {
    const { cp, cpk } = capability(24.01, 0.01, 23.96, 24.04)
    expect(cp).toBeCloseTo(4 / 3, 9)
    expect(cpk).toBeCloseTo(1, 9)
  })
})

describe('AIAG constants are 1/d2* (d2* for one subgroup: table from memory), tolerance 5e-5: four decimals', () => {
  const twoTimes = (values: readonly number[]) => values.map((value) => [value, value + 1e-6])
  it.each([
    [2, 1.414_21], [3, 1.911_55], [4, 2.238_87], [5, 2.481_24], [6, 2.672_53], [7, 2.829_81], [8, 2.962_88], [9, 3.077_94],
    [10, 3.179_05],
  ])('K3 of %d parts is 1/%f', (parts, d2) => {
    // parts one unit apart at most: PV is K3 itself
    const values = twoTimes(Array.from({ length: parts }, (_, index) => index / (parts - 1)))
    expect(Math.abs(averageAndRange([values, values]).parts - 1 / d2)).toBeLessThan(5.1e-5)
  })
  it.each([[2, 1.128, 0.8862], [3, 1.693, 0.5908]])('K1 of %d trials is 1/%f: %f', (trials, d2, k1) => {
    const cell = Array.from({ length: trials }, (_, index) => index / (trials - 1))
    const { repeatability } = averageAndRange([[cell, cell], [cell, cell]])
    expect(repeatability).toBeCloseTo(k1, 9)
    expect(Math.abs(repeatability - 1 / d2)).toBeLessThan(5e-4)
  })
})

describe('assignment, tolerance 0', () => {
  it.each([
    ['82 83 69 92 …', [[82, 83, 69, 92], [77, 37, 49, 92], [11, 69, 5, 86], [8, 9, 98, 23]], 140],
    ['250 400 350 …', [[250, 400, 350], [400, 600, 350], [200, 400, 250]], 950],
  ])('%s: least sum %d (widely taught, from memory); here the least worst cost goes first, by trying every pairing', (_, costs, sum) => {
    const tried = paidBy(costs)
    expect(Math.min(...tried.map(sumOf))).toBe(sum)
    const worst = Math.min(...tried.map((paid) => Math.max(...paid)))
    const bestOfThose = Math.min(...tried.filter((paid) => Math.max(...paid) === worst).map(sumOf))
    expect(assign(costs)).toMatchObject({ worst, sum: bestOfThose })
  })
  it('bores 1, 2, 3 and shafts 2, 1, 0 for a clearance of 1 pair off exactly', () => {
    expect(pairByClearance([3, 2, 1], [0, 1, 2], 1)).toMatchObject({ worst: 0, sum: 0, columns: [2, 1, 0] })
  })
  it('root-sum-square of 3, 4 and 12 is 13', () => expect(rootSumSquare(3, 4, 12)).toBe(13))
})

/** π = 16 arctan(1/5) − 4 arctan(1/239) (Machin), with ten guard digits. */
function piDigits(count: number): string {
  const unity = 10n ** BigInt(count + 10)
  const arctan = (inverse: bigint) => {
    let power = unity / inverse
    let sum = power
    for (let odd = 3n, sign = -1n; power !== 0n; odd += 2n, sign = -sign) {
      power /= inverse * inverse
      sum += (sign * power) / odd
    }
    return sum
  }
  return (16n * arctan(5n) - 4n * arctan(239n)).toString().slice(0, count)
}

function pairings(size: number): readonly (readonly number[])[] {
  if (size === 0) return [[]]
  return pairings(size - 1).flatMap((rest) =>
    Array.from({ length: size }, (_, at) => [...rest.slice(0, at), size - 1, ...rest.slice(at)]))
}

function paidBy(costs: readonly (readonly number[])[]): readonly (readonly number[])[] {
  return pairings(costs.length).map((columns) => columns.map((column, row) => costs[row]?.[column] ?? Number.NaN))
}

const sumOf = (paid: readonly number[]) => paid.reduce((sum, cost) => sum + cost, 0)
