import { describe, expect, it } from 'vitest'
import { typed } from '../testing/typed.ts'
import type { BenchWork } from './bench-work.ts'
import { elsewhere, othersWaiting, outgoingWords } from './elsewhere.ts'
import type { OutboxEntry } from './outbox-entry.ts'
import type { TypedReading } from './typed-reading.ts'

function entry(key: string, state: 'waiting' | 'stored' | 'refused', changes: Partial<TypedReading> = {}): OutboxEntry<BenchWork> {
  return { key, sequence: 1, content: typed(key, changes), state, problem: null, reason: null, insteadOf: null }
}

const entries = [
  entry('a', 'waiting'), entry('b', 'refused', { jobNumber: 2 }), entry('c', 'waiting', { jobNumber: 2 }),
  entry('d', 'stored', { jobNumber: 3 }), entry('e', 'waiting', { jobNumber: 2, personId: 'B' }),
]

describe('what has not arrived', () => {
  it('is counted for each step but the one in sight', () => {
    expect(elsewhere(entries, { jobNumber: 1, operationKey: 'hone-small-ends' }).map(({ jobNumber, waiting, refused }) =>
      [jobNumber, waiting, refused])).toEqual([[2, 2, 1]])
    expect(elsewhere(entries, null).map(({ jobNumber }) => jobNumber)).toEqual([1, 2])
  })

  it('names whoever else must sign in before it goes out', () => {
    expect(othersWaiting(entries, 'A')).toHaveLength(1)
    expect(othersWaiting(entries.slice(0, 4), 'A')).toEqual([])
  })

  it('is said in figures', () => {
    expect(outgoingWords({ waiting: 1, refused: 0 })).toBe('1 waits')
    expect(outgoingWords({ waiting: 2, refused: 1 })).toBe('2 wait, 1 refused')
  })
})
