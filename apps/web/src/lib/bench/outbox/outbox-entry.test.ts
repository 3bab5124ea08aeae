import { describe, expect, it } from 'vitest'
import { typed } from '../testing/typed.ts'
import { merged, type KeptEntry, type OutboxEntry } from './outbox-entry.ts'
import type { TypedReading } from './typed-reading.ts'

const known = (name: string, change: Partial<OutboxEntry<TypedReading>> = {}): OutboxEntry<TypedReading> => ({
  key: name, sequence: 1, content: typed(name), state: 'waiting', problem: null, reason: null, insteadOf: null, ...change,
})
const kept = (name: string): KeptEntry<TypedReading> => ({
  key: name, sequence: 1, content: typed(name), state: 'waiting', problem: null, reason: null,
})

describe('what lies on the device beside what a tab knows', () => {
  it('holds the very work that the tab knows: nothing is judged anew because it was read again', () => {
    const [before] = [known('a')]
    const [after] = merged([before], [kept('a')])
    expect(after?.content).toBe(before.content)
  })

  it('is sent by another tab when it waited and is gone', () => {
    expect(merged([known('a')], []).map(({ state }) => state)).toEqual(['stored'])
  })

  it('does not say of a value that is still on its way to the device that it arrived', () => {
    expect(merged([known('a', { sequence: null })], [])).toMatchObject([{ state: 'waiting', sequence: null }])
  })
})
