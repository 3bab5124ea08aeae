import { describe, expect, it } from 'vitest'
import {
  NANOMETRES_PER_TENTH, outOfRound, probabilityOfConformity, standardNormal, taper,
} from '../../packages/domain/src/index.ts'
import { judgeClearance, judgePair, type PairToJudge } from './support.ts'

const guarded = { kind: 'guarded', coverageFactor: 2 } as const
/** Standard uncertainty from an expanded one in tenths of a thousandth of an inch, k = 2. */
const standard = (expandedTenths: number) => (expandedTenths * NANOMETRES_PER_TENTH) / 2

describe('a pin bushing for forced induction, 0.0006 to 0.0010 in, target 0.0007, guarded (common practice, no source)', () => {
  const boosted: PairToJudge = {
    unit: 'inch', limits: { low: '0.0006', high: '0.0010', target: '0.0007' }, guard: guarded, remedyLow: 'hone',
  }
  it('at 0.0004 in by a gauge set on the pin is outside: 0.0003 in comes off the bushing, on diameter', () => {
    const verdict = judgeClearance(boosted, '0.0004', standard(0.5))
    expect(verdict).toMatchObject({ kind: 'outside', side: 'low', uncertainty: 1_270, guardBand: 1_270 })
    expect(verdict.remedy).toMatchObject({ action: 'hone', amount: 3 * NANOMETRES_PER_TENTH, reaches: 'target' })
    expect(verdict.remedy?.sentence).toBe('Hone 0.0003 in off bushing of rod 1, on diameter, to reach 0.0007 in.')
  })
  it('at 0.0007 in by the same gauge is within', () => {
    expect(judgeClearance(boosted, '0.0007', standard(0.5))).toMatchObject({ kind: 'within', remedy: null })
  })
  it('at 0.0007 in by micrometer and bore gauge, U = 0.00018 in, is not proven', () => {
    const each = standard(1.8) / Math.SQRT2
    const verdict = judgePair(boosted, '0.9277', '0.9270', { hole: each, shaft: each })
    expect(verdict).toMatchObject({ kind: 'not-proven', side: 'low', remedy: null })
    expect(verdict.uncertainty).toBeCloseTo(4_572, 9)
    expect(verdict.advice).toContain('0.00018 in')
  })
  it('at 0.0004 in without boost (0.0003 to 0.0008) is within', () => {
    const unboosted = { ...boosted, limits: { low: '0.0003', high: '0.0008', target: '0.0005' } }
    expect(judgeClearance(unboosted, '0.0004', standard(0.5)).kind).toBe('within')
  })
})

describe('ISO 14253-1 zones (from memory; illustration read on a secondary page, outcome computed), tolerance 0', () => {
  it('10.00 ± 0.05 mm read as 10.03 with U = 0.04 is undecided: neither good nor bad is proven', () => {
    // as a clearance: hole 10.03 over a shaft of nothing
    const pair: PairToJudge = { unit: 'millimetre', limits: { low: '9.95', high: '10.05' }, guard: guarded }
    expect(judgePair(pair, '10.03', '0', { hole: 20_000, shaft: 0 })).toMatchObject({ kind: 'not-proven', side: 'high' })
    expect(judgePair(pair, '10.01', '0', { hole: 20_000, shaft: 0 }).kind).toBe('within')
    expect(judgePair(pair, '10.09', '0', { hole: 20_000, shaft: 0 }).kind).toBe('not-proven')
    expect(judgePair(pair, '10.091', '0', { hole: 20_000, shaft: 0 }).kind).toBe('outside')
  })
  it('the same reading is simply accepted where no guard is kept', () => {
    const pair: PairToJudge = { unit: 'millimetre', limits: { low: '9.95', high: '10.05' } }
    expect(judgePair(pair, '10.03', '0', { hole: 20_000, shaft: 0 }).kind).toBe('within')
  })
})

describe('JCGM 106:2012, conformance probability (z computed; the guide’s table 1, from memory, prints two decimals)', () => {
  const oneSided = { low: null, high: 0, target: null, adviceLow: null, adviceHigh: null }
  it.each([
    [0.8, 0.8416], [0.9, 1.2816], [0.95, 1.6449], [0.99, 2.3263], [0.999, 3.0902],
  ])('is %f at %f standard uncertainties from the limit, tolerance 5e-5 in z', (probability, z) => {
    // z is printed to four decimals: the probability must lie between those of z ± 5e-5
    expect(standardNormal(z - 5e-5)).toBeLessThan(probability)
    expect(standardNormal(z + 5e-5)).toBeGreaterThan(probability)
    expect(probabilityOfConformity(-z, -z, oneSided, 1)).toBeCloseTo(probability, 4)
  })
  it('agrees with Φ as tabulated: Φ(1) 0.841345, Φ(2) 0.977250, Φ(3) 0.998650 (from memory), tolerance 5e-7', () => {
    expect(standardNormal(1)).toBeCloseTo(0.841345, 6)
    expect(standardNormal(2)).toBeCloseTo(0.97725, 6)
    expect(standardNormal(3)).toBeCloseTo(0.99865, 6)
    expect(standardNormal(-6) / 9.865_876_450_377e-10).toBeCloseTo(1, 10)
  })
})

describe('form by two points (computed from the curves; tolerance 1 nm for rounding the points to nanometres)', () => {
  // diameters of r(θ) = 50 + 0.005 cos(nθ) mm on two axes, 90° apart
  const diameter = (lobes: number, angle: number) =>
    100_000_000 + 5_000 * (Math.cos(lobes * angle) + Math.cos(lobes * (angle + Math.PI)))
  const section = (lobes: number) => [
    { station: 'top', axis: '0', value: diameter(lobes, 0) },
    { station: 'top', axis: '90', value: diameter(lobes, Math.PI / 2) },
  ]
  it('an oval with 0.010 mm between its radii shows 0.020 mm on diameter', () => {
    expect(outOfRound(section(2))?.value).toBeCloseTo(20_000, 0)
  })
  it('three lobes of the same height show nothing at all', () => {
    expect(outOfRound(section(3))?.value).toBeCloseTo(0, 0)
  })
  it('the other conventions give other figures for the same bore (Yamaha FX160 p. 5-93, Yanmar JH4E p. 178)', () => {
    // D1, D3, D5 on one axis, D2, D4, D6 on the other, from the top; invented sizes in microns
    const readings = [
      { station: 'top', axis: 'a', value: 30 }, { station: 'top', axis: 'b', value: 22 },
      { station: 'middle', axis: 'a', value: 24 }, { station: 'middle', axis: 'b', value: 20 },
      { station: 'bottom', axis: 'a', value: 18 }, { station: 'bottom', axis: 'b', value: 12 },
    ]
    // section by section: roundness max |A − B| and cylindricity max (max − min along), as Yanmar defines them
    expect(outOfRound(readings)).toEqual({ value: 8, at: 'top' })
    expect(taper(readings)).toEqual({ value: 12, at: 'a' })
    // Yamaha's T = max(D1, D2) − max(D5, D6) is 12; its R = max(D1, D3, D5) − min(D2, D4, D6) is 18, not 8
    expect(outOfRound(readings)?.value).not.toBe(18)
  })
})
