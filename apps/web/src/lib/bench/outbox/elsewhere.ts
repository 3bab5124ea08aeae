import type { BenchWork } from './bench-work.ts'
import type { OutboxEntry } from './outbox-entry.ts'
import { doneBy } from './typed-reading.ts'

/** What has not arrived of one step. */
export interface StepOutgoing {
  readonly jobNumber: number
  readonly operationKey: string
  readonly operationTitle: string
  readonly waiting: number
  readonly refused: number
}

/** Steps with work that waits or was refused, in the order of typing, but for the one in sight, which says it itself. */
export function elsewhere(
  entries: readonly OutboxEntry<BenchWork>[], inSight: { readonly jobNumber: number; readonly operationKey: string } | null,
): readonly StepOutgoing[] {
  const steps = new Map<string, StepOutgoing>()
  for (const { state, content: { jobNumber, operationKey, operationTitle } } of entries) {
    if (state === 'stored' || state === 'put-away' || (jobNumber === inSight?.jobNumber && operationKey === inSight.operationKey)) continue
    const key = `${jobNumber}/${operationKey}`
    const step = steps.get(key) ?? { jobNumber, operationKey, operationTitle, waiting: 0, refused: 0 }
    steps.set(key, { ...step, [state]: step[state] + 1 })
  }
  return [...steps.values()]
}

/** Who did what waits, other than the person who is signed in. */
export function othersWaiting(entries: readonly OutboxEntry<BenchWork>[], personId: string): readonly string[] {
  return [...new Set(entries
    .filter(({ state, content }) => state === 'waiting' && content.personId !== personId)
    .map(({ content }) => doneBy(content)))]
}

/** How much waits and was refused: “2 wait, 1 refused”. */
export function outgoingWords({ waiting, refused }: Pick<StepOutgoing, 'waiting' | 'refused'>): string {
  return [
    ...(waiting > 0 ? [`${waiting} ${waiting === 1 ? 'waits' : 'wait'}`] : []),
    ...(refused > 0 ? [`${refused} refused`] : []),
  ].join(', ')
}
