import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { outOfRoundLargestToSmallest, taperLargestToLargest } from './other-conventions.ts'
import { radialRoundness } from './radial-roundness.ts'

const section = (count: number, radius: (angle: number) => number) =>
  Array.from({ length: count }, (_, index) => radius((2 * Math.PI * index) / count))

describe('roundness from a circle', () => {
  it('of a true circle is nothing, wherever its centre lies', () => {
    fc.assert(fc.property(fc.double({ min: -0.01, max: 0.01, noNaN: true }), fc.double({ min: -0.01, max: 0.01, noNaN: true }), (x, y) => {
      expect(radialRoundness(section(36, (angle) => 50 + x * Math.cos(angle) + y * Math.sin(angle)))).toBeLessThan(1e-9)
    }))
  })
  it('is refused from too few radii, and from what is no radius', () => {
    expect(() => radialRoundness([50, 50, 50, 50, 50])).toThrow(expect.objectContaining({ code: 'point-unknown' }))
    expect(() => radialRoundness([50, 50, 50, 50, 50, NaN])).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
  })
})

describe('the other conventions', () => {
  const readings = [{ station: 'top', axis: 'a', value: 10 }, { station: 'bottom', axis: 'b', value: 12 }]
  it('give a taper a sign: negative when the bottom is larger', () => {
    expect(taperLargestToLargest(readings, 'top', 'bottom')).toBe(-2)
  })
  it('say nothing of an end or an axis that was not read', () => {
    expect(() => taperLargestToLargest(readings, 'top', 'middle')).toThrow(expect.objectContaining({ code: 'point-unknown' }))
    expect(() => outOfRoundLargestToSmallest(readings, 'a', 'c')).toThrow(expect.objectContaining({ code: 'point-unknown' }))
  })
})
