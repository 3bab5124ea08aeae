import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { nanometresOf } from '../exact/length.ts'
import { inches } from '../testing/engines.ts'
import { filletRoom, rodChamferNeeded } from './fillet.ts'

// Derived examples: fillet 0.110 in, edge bevel 0.030 in.
const fillet = inches(0.11)
const still = nanometresOf(0)
const shell = (inset: number) => ({ cheekInset: inches(inset), edgeBevel: inches(0.03) })

describe('a rod shell with the rod against its cheek', () => {
  it('of standard width fouls by 0.010 in: side clearance does not help', () => {
    expect(filletRoom(fillet, shell(0.07), still)).toEqual({ state: 'fouls', margin: inches(-0.01) })
  })

  it('of narrow width is clear by 0.025 in', () => {
    expect(filletRoom(fillet, shell(0.105), still)).toEqual({ state: 'clear', margin: inches(0.025) })
  })

  it('with the rod turned round fouls by 0.052 in', () => {
    expect(filletRoom(fillet, shell(0.028), still)).toEqual({ state: 'fouls', margin: inches(-0.052) })
  })

  it('is to be looked at within the shop’s margin of 0.010 in', () => {
    expect(filletRoom(fillet, shell(0.085), still).state).toBe('look')
    expect(filletRoom(fillet, shell(0.09), still).state).toBe('clear')
  })

  it('is unknown, never clear, while one of the figures is not measured', () => {
    const unmeasured = [
      filletRoom(null, shell(0.2), still),
      filletRoom(fillet, { ...shell(0.2), cheekInset: null }, still),
      filletRoom(fillet, { ...shell(0.2), edgeBevel: null }, still),
    ]
    for (const room of unmeasured) expect(room).toEqual({ state: 'unknown', margin: null })
  })
})

describe('a main shell', () => {
  it('fouls where the end play carries it into the cheek, however deep its bevel', () => {
    const deep = { cheekInset: inches(0.005), edgeBevel: inches(0.3) }
    expect(filletRoom(fillet, deep, inches(0.01))).toEqual({ state: 'fouls', margin: inches(-0.005) })
    expect(filletRoom(fillet, deep, still).state).toBe('look')
  })

  it('loses the whole end play', () => {
    expect(filletRoom(fillet, shell(0.105), inches(0.01)).margin).toBe(inches(0.015))
  })

  it('never gets clearer with more end play', () => {
    const inset = fc.integer({ min: 0, max: 5_000_000 })
    const travel = fc.integer({ min: 0, max: 500_000 })
    fc.assert(
      fc.property(inset, travel, travel, (cheekInset, one, other) => {
        const margin = (play: number) =>
          filletRoom(
            fillet,
            { cheekInset: nanometresOf(cheekInset), edgeBevel: inches(0.03) },
            nanometresOf(play),
          ).margin ?? 0
        expect(margin(Math.max(one, other))).toBeLessThanOrEqual(margin(Math.min(one, other)))
      }),
    )
  })
})

describe('the rod’s own edge', () => {
  it('needs a chamfer that leaves the fillet room', () => {
    // r − t = 0.0485 in; r − √(2rt − t²) = 0.110 − √(0.01353 − 0.00378225) = 0.0112693 in
    const { radial, axial } = rodChamferNeeded(fillet, inches(0.0615))
    expect(radial).toBe(inches(0.0485))
    expect(axial / 25_400_000).toBeCloseTo(0.0112693, 6)
  })

  it('needs none where the shell is thicker than the fillet', () => {
    expect(rodChamferNeeded(fillet, inches(0.12))).toEqual({ radial: 0, axial: 0 })
  })
})
