import type { setLots as setLotsRoute } from '@tenths/contract'
import type { PoolClient } from 'pg'
import { keptAlready } from '../bench/kept-already.ts'
import { requireSamePerson } from '../bench/same-person.ts'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'
import type { Answer } from '../http/register.ts'
import { loadPlan } from '../judging/load-evidence.ts'
import { loadPlaced } from '../judging/load-placed.ts'
import { projectOperations } from '../judging/project-operations.ts'
import { reOpen } from '../re-opening/re-open.ts'
import { signaturesOn } from '../re-opening/relying.ts'

type Route = typeof setLotsRoute
type Lots = CommandInput<Route>['body']['lots']

/**
 * Keeps lots or serials of parts. The first one is simply set; another one needs a reason, and re-opens the
 * steps that were signed with the one before.
 */
export async function setLots(
  { client, person, announce }: CommandContext, { params, body }: CommandInput<Route>,
): Promise<Answer<Route>> {
  const jobId = params.id
  announce({ kind: 'set-lots', jobId })
  requireSamePerson(person.id, body.typedBy, 'typedBy')
  await lockJob(client, jobId)
  const kept = await keptAlready(client, 'part_lot', body.lots.map(({ id }) => id), { jobId, personId: person.id })
  const known = await loadKnown(client, jobId, body.lots)
  const fresh = body.lots.filter(({ id, partId, lot }) => !kept.has(id) && known.get(partId) !== lot)
  const changed = fresh.filter(({ partId }) => known.get(partId) !== '')
  if (changed.length > 0 && body.reason === '') {
    throw new ServiceError('body-invalid', 'There is a lot already: say why another one is right.', 'reason')
  }
  await keepLots(client, { jobId, personId: person.id, reason: body.reason, lots: fresh })
  const reopened = await reOpen(client, await signedWith(client, jobId, changed.map(({ partId }) => partId)), {
    jobId, personId: person.id, cause: 'observation', reason: `Another lot: ${body.reason}`,
  })
  await projectOperations(client, jobId)
  return { reopened }
}

/** The lot of each part that is named. @throws ServiceError `part-unknown` */
async function loadKnown(client: PoolClient, jobId: string, lots: Lots): Promise<Map<string, string>> {
  const { rows } = await client.query<{ id: string; lot: string }>(
    'SELECT id, lot FROM part WHERE job_id = $1 AND id = ANY ($2)', [jobId, lots.map(({ partId }) => partId)],
  )
  const known = new Map(rows.map(({ id, lot }) => [id, lot]))
  lots.forEach(({ partId }, index) => {
    if (!known.has(partId)) throw new ServiceError('part-unknown', 'This job has no such part.', `lots.${index}.partId`)
  })
  return known
}

/** Adds to the history of each part, and repeats the lot on the part itself, for lists. */
export async function keepLots(
  client: PoolClient, { jobId, personId, reason, lots }: {
    jobId: string; personId: string; reason: string
    lots: readonly { id: string; partId: string; lot: string; deviceAt?: string }[]
  },
): Promise<void> {
  if (lots.length === 0) return
  const columns = [lots.map(({ id }) => id), lots.map(({ partId }) => partId), lots.map(({ lot }) => lot)]
  const deviceAts = lots.map(({ deviceAt }) => deviceAt ?? null)
  await client.query(
    `INSERT INTO part_lot (id, job_id, part_id, lot, reason, person_id, device_at)
     SELECT id, $1, part_id, lot, $2, $3, device_at
       FROM unnest($4::uuid[], $5::uuid[], $6::text[], $7::timestamptz[]) AS fresh (id, part_id, lot, device_at)
     ON CONFLICT (id) DO NOTHING`,
    [jobId, reason, personId, ...columns, deviceAts],
  )
  await client.query(
    `UPDATE part SET lot = fresh.lot
       FROM unnest($2::uuid[], $3::text[]) AS fresh (id, lot)
      WHERE part.job_id = $1 AND part.id = fresh.id`,
    [jobId, columns[1], columns[2]],
  )
}

/** Live signatures on the steps that put one of these parts in its place. */
async function signedWith(client: PoolClient, jobId: string, partIds: readonly string[]) {
  if (partIds.length === 0) return []
  const { plan } = await loadPlan(client, jobId)
  const places = new Set((await loadPlaced(client, jobId)).filter(({ partId }) => partIds.includes(partId)).map(({ place }) => place))
  const steps = plan.operations.filter(({ lots }) => lots?.some((place) => places.has(place)))
  return signaturesOn(client, jobId, steps.map(({ key }) => key))
}
