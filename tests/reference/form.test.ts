import { describe, expect, it } from 'vitest'
import {
  barrel, bell, outOfRound, outOfRoundLargestToSmallest, radialRoundness, taper, taperLargestToLargest,
} from '../../packages/domain/src/index.ts'

/** Radii of r(θ) = 50 + 0.005 cos(nθ) mm, and the diameters that a two-point gauge finds on two axes 90° apart. */
const radius = (lobes: number, angle: number) => 50 + 0.005 * Math.cos(lobes * angle)
const radii = (lobes: number) => Array.from({ length: 360 }, (_, degree) => radius(lobes, (degree * Math.PI) / 180))
const diameters = (lobes: number) => [0, Math.PI / 2].map((angle, index) => ({
  station: 'top', axis: String(index), value: radius(lobes, angle) + radius(lobes, angle + Math.PI),
}))

// Computed from the curves. Tolerance 1e-9 mm: arithmetic only.
describe('roundness on radius against two points on diameter', () => {
  it('an oval of ± 0.005 mm: 100.010 and 99.990 on diameter, two-point 0.020, radial 0.010', () => {
    expect(diameters(2)[0]?.value).toBeCloseTo(100.01, 9)
    expect(diameters(2)[1]?.value).toBeCloseTo(99.99, 9)
    expect(outOfRound(diameters(2))?.value).toBeCloseTo(0.02, 9)
    expect(radialRoundness(radii(2))).toBeCloseTo(0.01, 9)
  })
  it('three lobes of ± 0.005 mm: two-point 0.000, radial 0.010', () => {
    expect(outOfRound(diameters(3))?.value).toBeCloseTo(0, 9)
    expect(radialRoundness(radii(3))).toBeCloseTo(0.01, 9)
  })
})

// D1, D3, D5 on one axis and D2, D4, D6 on the other, from the top; invented sizes, in microns. Tolerance 0.
describe('one bore by each published convention', () => {
  const bore = [
    { station: 'top', axis: 'a', value: 30 }, { station: 'top', axis: 'b', value: 22 },
    { station: 'middle', axis: 'a', value: 24 }, { station: 'middle', axis: 'b', value: 20 },
    { station: 'bottom', axis: 'a', value: 18 }, { station: 'bottom', axis: 'b', value: 12 },
  ]
  it('section by section (Yanmar JH4E service manual, p. 178): roundness 8, cylindricity 12', () => {
    expect(outOfRound(bore)).toEqual({ value: 8, at: 'top' })
    expect(taper(bore)).toEqual({ value: 12, at: 'a' })
  })
  it('largest to largest (Yamaha FX160, p. 5-93): T = 30 − 18 = 12, R = 30 − 12 = 18', () => {
    expect(taperLargestToLargest(bore, 'top', 'bottom')).toBe(12)
    expect(outOfRoundLargestToSmallest(bore, 'a', 'b')).toBe(18)
  })
  it('opens to one end only: neither barrel nor bell (common practice, no source)', () => {
    const depths = ['top', 'middle', 'bottom']
    expect([barrel(bore, depths)?.value, bell(bore, depths)?.value]).toEqual([0, 0])
  })
})
