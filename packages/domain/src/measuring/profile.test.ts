import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { barrel, bell } from './profile.ts'

const depths = ['top', 'middle', 'bottom']
const along = (axis: string, ...values: number[]) =>
  values.map((value, index) => ({ station: depths[index] ?? '', axis, value }))

describe('a bore along its depth', () => {
  it('is barrelled when larger between than at both ends', () => {
    expect(barrel(along('thrust', 10, 14, 12), depths)).toEqual({ value: 2, at: 'thrust' })
    expect(bell(along('thrust', 10, 14, 12), depths)).toEqual({ value: 0, at: 'thrust' })
  })
  it('is bell-mouthed when smaller between than at both ends, on the worst axis', () => {
    const readings = [...along('thrust', 14, 10, 12), ...along('pin', 14, 10, 15)]
    expect(bell(readings, depths)).toEqual({ value: 4, at: 'pin' })
    expect(barrel(readings, depths)?.value).toBe(0)
  })
  it('is neither when it opens toward one end', () => {
    expect(barrel(along('pin', 10, 12, 14), depths)?.value).toBe(0)
    expect(bell(along('pin', 10, 12, 14), depths)?.value).toBe(0)
  })
  it('says nothing unless both ends and a depth between were read', () => {
    expect(barrel(along('pin', 10, 12), ['top', 'bottom'])).toBeNull()
    expect(bell(along('pin', 10, 12, 14).slice(1), depths)).toBeNull()
    expect(bell([], [])).toBeNull()
  })
  it('is never barrelled and bell-mouthed on the same axis at three depths', () => {
    const size = fc.integer({ min: -50, max: 50 })
    fc.assert(fc.property(size, size, size, (...sizes) => {
      const readings = along('pin', ...sizes)
      expect(Math.min(barrel(readings, depths)?.value ?? NaN, bell(readings, depths)?.value ?? NaN)).toBe(0)
    }))
  })
})
