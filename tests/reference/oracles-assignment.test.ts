import fc from 'fast-check'
import { munkres } from 'munkres'
import { describe, expect, it } from 'vitest'
import { assign, pairByClearance } from '../../packages/domain/src/index.ts'

// Independent oracle: munkres (least sum). The least worst cost is put to it as well: with all dearer pairs forbidden it
// still finds a matching at our worst, and none below it.
const costsOf = (largest: number) => fc.integer({ min: 1, max: 16 }).chain((size) => fc.array(
  fc.array(fc.integer({ min: 0, max: largest }), { minLength: size, maxLength: size }), { minLength: size, maxLength: size }))

const sumOf = (costs: readonly (readonly number[])[], pairs: readonly (readonly [number, number])[]) =>
  pairs.reduce((sum, [row, column]) => sum + (costs[row]?.[column] ?? Number.NaN), 0)

/** The least number of pairs dearer than `level` in any complete pairing. */
const dearerThan = (costs: readonly (readonly number[])[], level: number) => {
  const dear = costs.map((row) => row.map((cost) => (cost > level ? 1 : 0)))
  return sumOf(dear, munkres(dear))
}

describe('an assignment library agrees', () => {
  it('that no pairing has a lower worst cost, and one has this', () => {
    fc.assert(fc.property(costsOf(40), (costs) => {
      const { worst } = assign(costs)
      expect(dearerThan(costs, worst)).toBe(0)
      if (worst > 0) expect(dearerThan(costs, worst - 1)).toBeGreaterThan(0)
    }))
  })
  it('that among those no sum is lower', () => {
    fc.assert(fc.property(costsOf(1_000_000), (costs) => {
      const { worst, sum } = assign(costs)
      const allowed = costs.map((row) => row.map((cost) => (cost > worst ? 1_000_000_000 : cost)))
      expect(sum).toBe(sumOf(allowed, munkres(allowed)))
    }))
  })
  it('on sixteen pistons to sixteen bores', () => {
    fc.assert(fc.property(
      fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 16, maxLength: 16 }),
      fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 16, maxLength: 16 }),
      (bores, pistons) => {
        const holes = bores.map((tenth) => 102_362_000 + tenth * 2_540)
        const shafts = pistons.map((tenth) => 102_260_400 + tenth * 2_540)
        const { worst } = pairByClearance(holes, shafts, 101_600)
        const costs = holes.map((hole) => shafts.map((shaft) => Math.abs(hole - shaft - 101_600)))
        expect(dearerThan(costs, worst)).toBe(0)
        if (worst > 0) expect(dearerThan(costs, worst - 1)).toBeGreaterThan(0)
      },
    ))
  })
})
