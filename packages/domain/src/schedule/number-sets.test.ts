import fc from 'fast-check'
import { expect, it } from 'vitest'
import { NumberSets } from './number-sets.ts'

it('gives each set’s numbers back least first, whatever was added and taken before, within one block of bits or several', () => {
  const steps = (capacity: number) => fc.tuple(
    fc.constant(capacity),
    fc.array(fc.record({
      set: fc.integer({ min: 0, max: 2 }),
      number: fc.option(fc.integer({ min: 0, max: capacity - 1 }), { freq: 3 }),
    }), { maxLength: 200 }),
  )
  const capacities = fc.oneof(steps(1), steps(31), steps(33), steps(1_025), steps(32_768), steps(100_000))
  fc.assert(fc.property(capacities, ([capacity, moves]) => {
    const sets = new NumberSets(3, capacity)
    const models = [new Set<number>(), new Set<number>(), new Set<number>()] as const
    const take = (set: number, model: Set<number>) => {
      const least = Math.min(...model)
      expect(sets.takeLeast(set)).toBe(least)
      model.delete(least)
    }
    for (const { set, number } of moves) {
      const model = models[set]!
      if (number !== null && !model.has(number)) {
        sets.add(set, number)
        model.add(number)
      } else if (model.size > 0) take(set, model)
      expect(models.map((_, at) => sets.size(at))).toEqual(models.map(({ size }) => size))
    }
    for (const [set, model] of models.entries()) while (model.size > 0) take(set, model)
  }))
})

it('is empty after it was cleared', () => {
  const sets = new NumberSets(2, 40_000)
  for (const number of [5, 77, 39_999]) sets.add(1, number)
  sets.clear()
  expect(sets.size(1)).toBe(0)
  sets.add(1, 1_500)
  expect([sets.takeLeast(1), sets.size(1)]).toEqual([1_500, 0])
})
