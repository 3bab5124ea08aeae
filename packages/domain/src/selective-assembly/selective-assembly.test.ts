import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { assign } from './assignment.ts'
import { pairByClearance, pairByWeight } from './pairing.ts'

/** Every order of the columns, one by one. */
function* permutations(columns: readonly number[]): Generator<readonly number[]> {
  if (columns.length === 0) yield []
  for (const first of columns) {
    for (const rest of permutations(columns.filter((column) => column !== first))) yield [first, ...rest]
  }
}

function price(costs: readonly (readonly number[])[], columns: readonly number[]) {
  const paid = columns.map((column, row) => costs[row]?.[column] ?? Number.NaN)
  return { worst: Math.max(...paid), sum: paid.reduce((sum, cost) => sum + cost, 0) }
}

function matrix(largest: number, greatest: number) {
  return fc
    .integer({ min: 1, max: largest })
    .chain((size) =>
      fc.array(fc.array(fc.integer({ min: 0, max: greatest }), { minLength: size, maxLength: size }), {
        minLength: size,
        maxLength: size,
      }),
    )
}

describe('an assignment', () => {
  it('has the least worst cost of all, and the least sum among those, by trying every one', () => {
    fc.assert(
      fc.property(matrix(6, 12), (costs) => {
        const all = [...permutations(costs.map((_, index) => index))].map((columns) =>
          price(costs, columns),
        )
        const worst = Math.min(...all.map((each) => each.worst))
        const sum = Math.min(...all.filter((each) => each.worst === worst).map((each) => each.sum))
        const found = assign(costs)
        expect(found).toMatchObject({ worst, sum })
        expect(price(costs, found.columns)).toEqual({ worst, sum })
      }),
      { numRuns: 200 },
    )
  })

  it('of sixteen is never beaten by a random one', () => {
    const sixteen = fc.array(
      fc.array(fc.integer({ min: 0, max: 1e12 }), { minLength: 16, maxLength: 16 }),
      { minLength: 16, maxLength: 16 },
    )
    const order = fc.shuffledSubarray(
      Array.from({ length: 16 }, (_, index) => index),
      { minLength: 16 },
    )
    fc.assert(
      fc.property(sixteen, order, (costs, columns) => {
        const found = assign(costs)
        const random = price(costs, columns)
        expect(new Set(found.columns).size).toBe(16)
        expect(found.worst).toBeLessThanOrEqual(random.worst)
        if (random.worst === found.worst) expect(found.sum).toBeLessThanOrEqual(random.sum)
      }),
    )
  })

  it.each([
    ['nothing', []],
    ['more parts on one side', [[1, 2]]],
    ['a cost that is not whole', [[0.5]]],
    ['a negative cost', [[-1]]],
    ['more than sixteen', Array.from({ length: 17 }, () => Array.from({ length: 17 }, () => 1))],
  ])('is refused for %s', (_, costs) => {
    expect(() => assign(costs)).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
  })
})

describe('pairing parts', () => {
  it('gives the largest piston to the largest bore when all can be on target', () => {
    const bores = [102_360_000, 102_362_000, 102_358_000]
    const pistons = [102_262_000, 102_258_000, 102_260_000]
    expect(pairByClearance(bores, pistons, 100_000)).toEqual({ columns: [2, 0, 1], worst: 0, sum: 0 })
  })

  it('brings pins and pistons that clash when mixed inside a printed 0.002–0.006 mm', () => {
    // A production manual prints this clearance for pins of 18.989–19.001 in bores of 18.993–19.005 mm:
    // graded parts.
    const grades = [0, 3_000, 6_000, 9_000, 12_000]
    const bores = grades.map((grade) => 18_993_000 + grade)
    const pins = grades.map((grade) => 18_989_000 + grade).toReversed()
    const mixed = bores.map((bore, index) => bore - (pins[index] ?? 0))
    expect(Math.min(...mixed)).toBeLessThan(0)
    const { columns } = pairByClearance(bores, pins, 4_000)
    expect(bores.map((bore, index) => bore - (pins[columns[index] ?? 0] ?? 0))).toEqual(
      bores.map(() => 4_000),
    )
  })

  it('puts the heavy piston on the light rod', () => {
    expect(pairByWeight([600_000, 601_000], [420_000, 421_000])).toEqual({
      columns: [1, 0],
      worst: 0,
      sum: 0,
    })
  })
})
