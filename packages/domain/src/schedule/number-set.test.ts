import fc from 'fast-check'
import { expect, it } from 'vitest'
import { NumberSet } from './number-set.ts'

it('gives numbers back least first, whatever was added and taken before, at one level of bits or at three', () => {
  const steps = (capacity: number) => fc.tuple(
    fc.constant(capacity), fc.array(fc.option(fc.integer({ min: 0, max: capacity - 1 }), { freq: 3 }), { maxLength: 200 }),
  )
  fc.assert(fc.property(fc.oneof(steps(1), steps(31), steps(33), steps(1_025), steps(40_000)), ([capacity, moves]) => {
    const set = new NumberSet(capacity)
    const model = new Set<number>()
    const take = () => {
      const least = Math.min(...model)
      expect(set.takeLeast()).toBe(least)
      model.delete(least)
    }
    for (const number of moves) {
      if (number !== null && !model.has(number)) {
        set.add(number)
        model.add(number)
      } else if (model.size > 0) take()
      expect(set.size).toBe(model.size)
    }
    while (model.size > 0) take()
  }))
})

it('is empty after it was cleared', () => {
  const set = new NumberSet(2_000)
  for (const number of [5, 77, 1_999]) set.add(number)
  set.clear()
  set.add(1_500)
  expect([set.takeLeast(), set.size]).toEqual([1_500, 0])
})
