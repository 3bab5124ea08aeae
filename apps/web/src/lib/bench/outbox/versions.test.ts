import { describe, expect, it } from 'vitest'
import { upgraded } from './versions.ts'

describe('an entry that an older version of the program kept', () => {
  it('is a reading when only readings were kept, and reaches the newest version step by step', () => {
    const entry = upgraded({ version: 1, content: { cell: 'bore 1', personId: 'A' } }, 3)
    expect(entry).toMatchObject({ version: 3, reason: null, content: { kind: 'reading', behind: false, cellTitle: 'bore 1', personId: 'A' } })
  })
  it('of the version before zero checks is taken over as it is', () => {
    const content = { kind: 'tick', item: 'oil-hole' }
    expect(upgraded({ version: 2, sequence: 7, content }, 3)).toEqual({ version: 3, sequence: 7, content })
  })
  it('of the version before tests, lots and findings is taken over as it is', () => {
    const content = { kind: 'zero-check' }
    expect(upgraded({ version: 3, sequence: 8, content }, 4)).toEqual({ version: 4, sequence: 8, content })
  })
  it('of a newer version stays where it is', () => {
    expect(upgraded({ version: 5, content: {} }, 4).version).toBe(5)
  })
})
