import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { keepSame, steadyList } from './keep-same.ts'

describe('what an answer shares with the one before it', () => {
  it('is the whole of it when nothing changed', () => {
    fc.assert(fc.property(fc.jsonValue(), (value) => {
      const before = structuredClone(value)
      expect(keepSame(before, structuredClone(value))).toBe(before)
    }))
  })

  it('never changes what it says', () => {
    fc.assert(fc.property(fc.jsonValue(), fc.jsonValue(), (before, fresh) => {
      expect(keepSame<unknown>(before, structuredClone(fresh))).toStrictEqual(fresh)
    }))
  })

  it('is everything beside the part that changed', () => {
    const before = { plan: { steps: [{ key: 'a' }] }, passes: [{ id: 1, readings: [1] }, { id: 2, readings: [] }] }
    const now = keepSame(before, { plan: { steps: [{ key: 'a' }] }, passes: [{ id: 1, readings: [1] }, { id: 2, readings: [9] }] })
    expect(now.plan).toBe(before.plan)
    expect(now.passes[0]).toBe(before.passes[0])
    expect(now.passes[1]).toEqual({ id: 2, readings: [9] })
  })

  it('is nothing before the first', () => {
    expect(keepSame(undefined, { a: 1 })).toEqual({ a: 1 })
  })
})

describe('a steady list', () => {
  it('stays the same list while its members do', () => {
    const steady = steadyList<object>()
    const [one, other] = [{}, {}]
    const first = steady([one, other])
    expect(steady([one, other])).toBe(first)
    expect(steady([one])).toEqual([one])
    expect(steady([one, {}])).not.toBe(first)
  })
})
