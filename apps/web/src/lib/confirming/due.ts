import type { listPendingSignOffs } from '@tenths/contract'
import type { AnswerOf } from '../api/call.ts'

export type PendingSignOff = AnswerOf<typeof listPendingSignOffs>['pending'][number]

/** Whether it waits for this person's PIN. */
export function isDue({ state, signers }: PendingSignOff, personId: string): boolean {
  return state === 'to-confirm' && signers.some(({ id, confirmed }) => id === personId && !confirmed)
}
