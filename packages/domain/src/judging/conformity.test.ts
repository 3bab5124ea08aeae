import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { probabilityOfConformity, standardNormal } from './conformity.ts'
import { zoneOf } from './zones.ts'

const limits = { low: 0, high: 100, target: null, adviceLow: null, adviceHigh: null }

describe('the normal distribution', () => {
  it('is symmetric and never falls, its two ways of reckoning included', () => {
    const z = fc.double({ min: -12, max: 12, noNaN: true })
    fc.assert(fc.property(z, fc.double({ min: 0, max: 1, noNaN: true }), (at, step) => {
      expect(standardNormal(at) + standardNormal(-at)).toBeCloseTo(1, 14)
      expect(standardNormal(at + step)).toBeGreaterThanOrEqual(standardNormal(at) - 1e-15)
    }))
    expect(standardNormal(3)).toBeCloseTo(standardNormal(3 + 1e-12), 11)
    expect([standardNormal(Infinity), standardNormal(-Infinity), standardNormal(0)]).toEqual([1, 0, 0.5])
  })
})

describe('probability of conformity', () => {
  it('is one half on a single limit, and certain one way or the other without uncertainty', () => {
    expect(probabilityOfConformity(100, 100, { ...limits, low: null }, 3)).toBe(0.5)
    expect(probabilityOfConformity(100, 100, limits, 0)).toBe(1)
    expect(probabilityOfConformity(0, 0, limits, 0)).toBe(1)
    expect(probabilityOfConformity(101, 101, limits, 0)).toBe(0)
    expect(probabilityOfConformity(-1, -1, limits, 0)).toBe(0)
  })
  it('keeps its small figures far outside', () => {
    expect(probabilityOfConformity(-70, -70, limits, 10)).toBeGreaterThan(1e-12)
    expect(probabilityOfConformity(170, 170, limits, 10)).toBeGreaterThan(1e-12)
  })
  it('stays between nothing and one', () => {
    const value = fc.integer({ min: -300, max: 300 })
    fc.assert(fc.property(value, fc.nat(300), fc.double({ min: 0, max: 50, noNaN: true }), (least, spread, u) => {
      const probability = probabilityOfConformity(least, least + spread, limits, u)
      expect(probability).toBeGreaterThanOrEqual(0)
      expect(probability).toBeLessThanOrEqual(1)
    }))
  })
})

describe('zones', () => {
  it('are closed on the acceptance limit, and outside begins past limit and guard band', () => {
    expect(zoneOf(10, 10, limits, 10)).toEqual({ kind: 'within', side: null })
    expect(zoneOf(9, 9, limits, 10)).toEqual({ kind: 'not-proven', side: 'low' })
    expect(zoneOf(-10, -10, limits, 10)).toEqual({ kind: 'not-proven', side: 'low' })
    expect(zoneOf(-11, -11, limits, 10)).toEqual({ kind: 'outside', side: 'low' })
    expect(zoneOf(111, 111, limits, 10)).toEqual({ kind: 'outside', side: 'high' })
  })
  it('are accepted simply without a guard band', () => {
    expect(zoneOf(0, 100, limits, 0).kind).toBe('within')
    expect(zoneOf(-1, 101, limits, 0)).toEqual({ kind: 'outside', side: 'both' })
    expect(zoneOf(-1, 100, limits, 0)).toEqual({ kind: 'outside', side: 'low' })
  })
})

describe('the normal tail far out', () => {
  /** Mills' ratio with 400 levels at every z, where the function itself takes as few as settle it. */
  const tailAtLength = (z: number) => {
    let inner = z
    for (let level = 400; level >= 1; level -= 1) inner = z + level / inner
    return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI) / inner
  }

  it('is settled to a few units of a double’s last figure from z = 3 on, and is nothing where no double is as small', () => {
    for (let z = 3.01; z < 37; z += 0.01) {
      expect(Math.abs(standardNormal(-z) / tailAtLength(z) - 1)).toBeLessThan(2e-15)
    }
    expect(tailAtLength(39)).toBe(0)
    expect([standardNormal(-39.1), standardNormal(8.4)]).toEqual([0, 1])
    expect(1 - tailAtLength(8.3)).toBe(1)
  })
})
