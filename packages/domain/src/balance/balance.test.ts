import { describe, expect, it } from 'vitest'
import { bobweight } from './bobweight.ts'
import { permissibleEccentricity, permissibleUnbalance } from './residual.ts'

const rod = {
  bigEnd: 400_000,
  shells: 40_000,
  smallEnd: 180_001,
  piston: 420_000,
  pin: 110_000,
  rings: 45_000,
  retainers: 2_000,
}

describe('a bobweight', () => {
  it('is all that turns at a factor of nothing, and everything at a factor of one', () => {
    expect(bobweight([rod], 0, 3_000)).toBe(443_000)
    expect(bobweight([rod], 1_000, 3_000)).toBe(443_000 + 757_001)
  })

  it('is a whole number of milligrams, half to even', () => {
    expect(bobweight([rod], 500, 0)).toBe(440_000 + 378_500)
    expect(bobweight([{ ...rod, smallEnd: 180_003 }], 500, 0)).toBe(440_000 + 378_502)
  })

  it('of rods that differ counts each by its own', () => {
    const heavier = { ...rod, piston: 421_000 }
    expect(bobweight([rod, heavier], 500, 0)).toBe(880_000 + 757_501)
  })

  it.each([
    ['no rods', () => bobweight([], 500, 0)],
    ['a factor over one', () => bobweight([rod], 1_001, 0)],
    ['a negative mass', () => bobweight([{ ...rod, pin: -1 }], 500, 0)],
    ['a crank that stands still', () => permissibleEccentricity(6.3, 0)],
    ['a grade that the standard does not have', () => permissibleUnbalance(20, 5_000, 3_000)],
  ])('is refused for %s', (_, compute) => {
    expect(compute).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
  })
})
