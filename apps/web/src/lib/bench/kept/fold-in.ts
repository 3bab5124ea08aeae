import { address } from '../../api/call.ts'
import { readOperation } from '@tenths/contract'
import type { BenchWork } from '../outbox/bench-work.ts'
import type { OperationSheet } from '../sheet/operation-sheet.ts'
import { withWork } from '../sheet/with-work.ts'
import { changeKept } from './kept-answers.ts'

/**
 * Writes what has arrived into the sheets of its jobs as they lie on the device, so that one that is opened without a
 * network before it could be read again still shows it. What shows on one step only leaves the other sheets unread.
 */
export async function foldIn(all: readonly BenchWork[]): Promise<void> {
  for (const number of new Set(all.map(({ jobNumber }) => jobNumber))) {
    const work = all.filter(({ jobNumber }) => jobNumber === number)
    const [only, ...others] = new Set(work.map(({ operationKey }) => operationKey))
    const key = others.length === 0 && work.every(showsHereOnly) ? only ?? '' : ''
    await changeKept(address(readOperation.path, { number, key }), (answer) => withWork(answer as OperationSheet, work))
  }
}

/** A mark lets the next step begin, a drifted zero voids wherever the gauge read; a value, a tick and a turn of the clock do not. */
function showsHereOnly({ kind }: BenchWork): boolean {
  return kind === 'reading' || kind === 'tick' || kind === 'clock'
}
