import { address } from '../../api/call.ts'
import { readOperation } from '@tenths/contract'
import type { BenchWork } from '../outbox/bench-work.ts'
import type { OperationSheet } from '../sheet/operation-sheet.ts'
import { withWork } from '../sheet/with-work.ts'
import { changeKept } from './kept-answers.ts'

/**
 * Writes what has arrived into the sheets of its job as they lie on the device, so that one that is opened without a
 * network before it could be read again still shows it. What shows on its own step only leaves the other sheets unread.
 */
export function foldIn(work: BenchWork): Promise<void> {
  const key = showsHereOnly(work) ? work.operationKey : ''
  const beginning = address(readOperation.path, { number: work.jobNumber, key })
  return changeKept(beginning, (answer) => withWork(answer as OperationSheet, [work]))
}

/** A mark lets the next step begin, a drifted zero voids wherever the gauge read; a value, a tick and a turn of the clock do not. */
function showsHereOnly({ kind }: BenchWork): boolean {
  return kind === 'reading' || kind === 'tick' || kind === 'clock'
}
