import { describe, expect, it } from 'vitest'
import { nanometresOf } from '../exact/length.ts'
import { allowedDrift, hasDrifted } from './zero-check.ts'

const tenth = 2_540

describe('a zero checked at the end', () => {
  it('may have moved by the shop’s number, or by one readable step of a coarser gauge', () => {
    expect(allowedDrift({ display: 'analogue', division: nanometresOf(tenth) }, tenth)).toBe(tenth)
    expect(allowedDrift({ display: 'digital', division: nanometresOf(10_000) }, tenth)).toBe(10_000)
  })
  it('voids what was read only beyond that, either way', () => {
    expect([tenth, -tenth, tenth + 1, -tenth - 1].map((deviation) => hasDrifted({ deviation, allowed: tenth })))
      .toEqual([false, false, true, true])
  })
})
