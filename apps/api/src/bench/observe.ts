import type { observe as observeRoute } from '@tenths/contract'
import type { Operation } from '@tenths/domain'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import type { Answer } from '../http/register.ts'
import { loadPlan } from '../judging/load-evidence.ts'
import { projectOperations } from '../judging/project-operations.ts'
import { reOpen } from '../re-opening/re-open.ts'
import { signaturesOn } from '../re-opening/relying.ts'
import { loadObservations, type WireObservation } from './load-observations.ts'
import { operationOf, requireReachable } from './reach.ts'
import { requireAnswer } from './asked.ts'
import { requireSamePerson } from './same-person.ts'
import { beginWork, earliest } from './work-time.ts'

type Route = typeof observeRoute

/** Keeps ticks; one that says otherwise than before on a signed operation re-opens its signature. */
export async function observe(
  { client, person, announce, now }: CommandContext, { params, body }: CommandInput<Route>,
): Promise<Answer<Route>> {
  const jobId = params.id
  announce({ kind: 'observe', jobId, operationKey: body.operationKey })
  requireSamePerson(person.id, body.seenBy, 'seenBy')
  await lockJob(client, jobId)
  const { plan } = await loadPlan(client, jobId)
  const operation = operationOf(plan, body.operationKey)
  body.observations.forEach((said, index) => requireAnswer(operation, said, now, `observations.${index}`))
  if (await areKnown(client, body.observations)) {
    return { observations: await loadObservations(client, jobId, operation.key) }
  }
  const signatures = await signaturesOn(client, jobId, [operation.key])
  if (signatures.length === 0) await requireReachable(client, { jobId, plan, operation, behind: body.behind })
  const before = new Map((await loadObservations(client, jobId, operation.key)).map((tick) => [tick.item, tick]))
  await client.query(
    `INSERT INTO observation (id, job_id, operation_key, item, outcome, note, since, person_id, device_at)
     SELECT id, $1, $2, item, outcome, note, since, $3, "deviceAt"
       FROM json_to_recordset($4) AS fresh (
              id uuid, item text, outcome text, note text, since timestamptz, "deviceAt" timestamptz)
     ON CONFLICT (id) DO NOTHING`,
    [jobId, operation.key, person.id, JSON.stringify(body.observations)],
  )
  // A tick that is taken back on a signed step is a correction, no work.
  if (signatures.length === 0) {
    await beginWork(client, { jobId, operationKey: operation.key, personId: person.id }, {
      deviceAt: earliest(body.observations), deviceOffset: body.deviceOffset,
    })
  }
  const latest = await loadObservations(client, jobId, operation.key)
  const changed = latest.find((tick) => saysOtherwise(operation, tick, before.get(tick.item)))
  if (changed !== undefined) {
    const title = operation.observations.find(({ key }) => key === changed.item)?.title ?? changed.item
    const isOutcome = changed.outcome !== before.get(changed.item)?.outcome
    await reOpen(client, signatures, {
      jobId, personId: person.id, cause: 'observation',
      reason: isOutcome ? `“${title}” is now ${outcomeWords[changed.outcome]}.` : `“${title}” was written down anew.`,
    })
  }
  await projectOperations(client, jobId)
  return { observations: latest }
}

/** Another outcome than before; and where words or a time are asked for, other words or another time. */
function saysOtherwise(operation: Operation, tick: WireObservation, before: WireObservation | undefined): boolean {
  if (before === undefined) return false
  const asks = operation.observations.find(({ key }) => key === tick.item)?.asks
  return tick.outcome !== before.outcome
    || (asks !== undefined && (tick.note !== before.note || tick.since !== before.since))
}

/** Whether all of these are kept already: a repeat has no effect, whatever happened since. */
async function areKnown(
  client: CommandContext['client'], observations: readonly { readonly id: string }[],
): Promise<boolean> {
  const { rowCount } = await client.query(
    'SELECT FROM observation WHERE id = ANY ($1)', [observations.map(({ id }) => id)],
  )
  return rowCount === observations.length
}

const outcomeWords = { seen: 'seen', 'not-seen': 'not seen', 'not-applicable': 'not applicable' } as const
