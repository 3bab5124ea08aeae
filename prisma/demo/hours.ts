import { startWork } from '@tenths/contract'
import type { BenchKind } from '@tenths/domain'
import { crewOf, type Hands } from './hands.ts'
import { idOf } from './identity.ts'
import { scatterOf } from './scatter.ts'
import type { OperationAnswer } from './situation.ts'

/** Where somebody of the demo keeps the clock in hand: enough that the owner sees hours against the standard. */
const timedAt: readonly BenchKind[] = ['rod-bench', 'boring-bar', 'hone', 'crank-grinder', 'rod-hone', 'pin-hone']

/** The service counts a touch from when it was made for seven days. */
const LONGEST_AGO = 6 * 24 * 60

/**
 * Puts a stretch of work before now on a step that is about to be signed, as a tablet sends it that had no network. How long
 * it took is the demo's invention: each kind of step runs over or under its standard a little, each job a little differently.
 */
export async function keepHours({ callers, jobId, jobKey, spokenFor }: Hands, { operation }: OperationAnswer): Promise<void> {
  if (!timedAt.includes(operation.bench)) return
  const [person] = crewOf(operation)
  const pace = scatterOf('pace', operation.key).between(0.75, 1.35) * scatterOf('pace', jobKey, operation.key).between(0.9, 1.1)
  // A few minutes between two stretches: a load takes time itself.
  const until = (spokenFor.get(person) ?? 60) + 5
  const since = until + Math.round(operation.minutes * pace)
  if (since > LONGEST_AGO) return
  spokenFor.set(person, since)
  for (const [action, ago] of [['start', since], ['stop', until]] as const) {
    await callers[person].call(startWork, {
      params: { id: jobId },
      body: {
        id: idOf('hours', jobId, operation.key, action), operationKey: operation.key, action,
        deviceAt: new Date(Date.now() - ago * 60_000).toISOString(), deviceOffset: 0,
      },
    })
  }
}
