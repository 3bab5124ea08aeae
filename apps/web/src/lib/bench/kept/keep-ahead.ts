import { readOperation, type readQueue } from '@tenths/contract'
import { address, type AnswerOf } from '../../api/call.ts'
import { callKept } from './call-kept.ts'
import { readLast } from './kept-answers.ts'

/** As many steps of a queue as a person gets through while the network is gone. */
const most = 6
/** A sheet that was read less than this long ago is kept as it is, in milliseconds. */
const freshFor = 600_000

/**
 * Reads the sheets of what can be done next at a bench, one after the other, so that each opens without a network although
 * nobody has opened it yet. What cannot be read now is tried again when the queue changes.
 */
export async function keepAhead(entries: AnswerOf<typeof readQueue>['entries'], signal: AbortSignal): Promise<void> {
  const next = entries.filter(({ state }) => state !== 'waiting' && state !== 'signed').slice(0, most)
  for (const { jobNumber: number, key } of next) {
    if (signal.aborted) return
    const last = await readLast(address(readOperation.path, { number, key }))
    if (last !== null && Date.now() - last < freshFor) continue
    await callKept(readOperation, { params: { number, key } }, { signal }).catch(() => undefined)
  }
}
