import type { recordInspections as recordRoute } from '@tenths/contract'
import type { Inspection, Operation } from '@tenths/domain'
import type { PoolClient } from 'pg'
import { v7 as uuid } from 'uuid'
import { keptAlready } from '../bench/kept-already.ts'
import { operationOf, requireReachable } from '../bench/reach.ts'
import { requireSamePerson } from '../bench/same-person.ts'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'
import type { Answer } from '../http/register.ts'
import { loadPlan } from '../judging/load-evidence.ts'
import { loadPlaced } from '../judging/load-placed.ts'
import { projectOperations } from '../judging/project-operations.ts'
import { countingInspections } from '../judging/tested.ts'
import { reOpen } from '../re-opening/re-open.ts'
import { signaturesOn } from '../re-opening/relying.ts'
import { findingKeyOf, loadInspections, loadLatestInspections } from './load-inspections.ts'

type Route = typeof recordRoute
type Result = CommandInput<Route>['body']['results'][number]

export const resultWords = {
  'no-indication': 'no indication', indication: 'an indication', 'not-tested': 'not tested',
} as const

/**
 * Keeps what a test showed. An indication, or an area that was not tested, goes to the owner and stops the
 * step until it is decided; on a signed step another result than before re-opens the signature.
 */
export async function recordInspections(
  { client, person, announce }: CommandContext, { params, body }: CommandInput<Route>,
): Promise<Answer<Route>> {
  const jobId = params.id
  announce({ kind: 'record-inspections', jobId, operationKey: body.operationKey })
  requireSamePerson(person.id, body.testedBy, 'testedBy')
  await lockJob(client, jobId)
  const ids = body.results.map(({ id }) => id)
  const known = await keptAlready(client, 'inspection', ids, { jobId, personId: person.id })
  const reopened = known.size === ids.length ? [] : await keepFresh(client, person.id, jobId, body)
  const { evidence } = await projectOperations(client, jobId)
  const counting = countingInspections(evidence)
  return { inspections: await loadInspections(client, jobId, body.operationKey, counting), reopened }
}

/** Keeps the results that are not kept yet. @returns the steps that opened again because of them */
async function keepFresh(
  client: PoolClient, personId: string, jobId: string, body: CommandInput<Route>['body'],
): Promise<Answer<Route>['reopened']> {
  const { plan } = await loadPlan(client, jobId)
  const operation = operationOf(plan, body.operationKey)
  const areas = body.results.map((result, index) => areaOf(operation, result, `results.${index}`))
  await requirePeople(client, body.results)
  const signatures = await signaturesOn(client, jobId, [operation.key])
  if (signatures.length === 0) await requireReachable(client, { jobId, plan, operation, behind: body.behind })

  const partAt = new Map((await loadPlaced(client, jobId)).map(({ place, partId }) => [place, partId]))
  // The newest comes first, so the oldest is written first and the newest stays.
  const before = new Map((await loadLatestInspections(client, jobId))
    .filter(({ operationKey }) => operationKey === operation.key)
    .reverse()
    .map(({ item, result }) => [item, result]))
  let reason: string | null = null
  for (const [index, area] of areas.entries()) {
    const result = body.results[index]
    if (result === undefined) continue
    const isNew = await keep(client, { jobId, operation, result, partId: partAt.get(area.place) ?? null, personId })
    if (!isNew) continue
    if (result.result !== 'no-indication') await askOwner(client, { jobId, operation, area, result, personId })
    if (before.has(area.key) && before.get(area.key) !== result.result) {
      reason ??= `${area.title} is now: ${resultWords[result.result]}.`
    }
  }
  return reason === null ? [] : reOpen(client, signatures, { jobId, personId, cause: 'observation', reason })
}

/** @throws ServiceError `body-invalid` for an area that the step has not, or a method that cannot show anything there */
function areaOf(operation: Operation, { item, method, pressure, result, note }: Result, field: string): Inspection {
  const area = operation.inspections?.find(({ key }) => key === item)
  if (area === undefined) {
    throw new ServiceError('body-invalid', `“${operation.title}” has no such area.`, `${field}.item`)
  }
  if (!area.methods.includes(method)) {
    throw new ServiceError('body-invalid', `${area.title} is not tested this way.`, `${field}.method`)
  }
  if (result === 'not-tested') {
    if (note === '') throw new ServiceError('body-invalid', 'Say why it was not tested.', `${field}.note`)
    return area
  }
  if (method === 'pressure' && (pressure === null || pressure <= 0)) {
    throw new ServiceError('value-out-of-range', 'Write down the test pressure.', `${field}.pressure`)
  }
  if (method !== 'pressure' && pressure !== null) {
    throw new ServiceError('value-out-of-range', 'Only a pressure test has a pressure.', `${field}.pressure`)
  }
  return area
}

async function requirePeople(client: PoolClient, results: readonly Result[]): Promise<void> {
  const wanted = [...new Set(results.map(({ inspectorId }) => inspectorId))]
  const { rows } = await client.query<{ id: string }>('SELECT id FROM person WHERE id = ANY ($1) AND active', [wanted])
  const known = new Set(rows.map(({ id }) => id))
  const index = results.findIndex(({ inspectorId }) => !known.has(inspectorId))
  if (index < 0) return
  throw new ServiceError('body-invalid', 'Nobody of this shop is known by that name.', `results.${index}.inspectorId`)
}

async function keep(
  client: PoolClient, { jobId, operation, result, partId, personId }: {
    jobId: string; operation: Operation; result: Result; partId: string | null; personId: string
  },
): Promise<boolean> {
  const { rowCount } = await client.query(
    `INSERT INTO inspection
       (id, job_id, operation_key, item, part_id, method, pressure, result, note, inspector_id, person_id, device_at)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12)
     ON CONFLICT (id) DO NOTHING`,
    [
      result.id, jobId, operation.key, result.item, partId, result.method,
      result.result === 'not-tested' ? null : result.pressure, result.result, result.note, result.inspectorId, personId,
      result.deviceAt ?? null,
    ],
  )
  return rowCount === 1
}

/** A stopping finding about this very result: the step cannot be signed before the owner has decided. */
async function askOwner(
  client: PoolClient, { jobId, operation, area, result, personId }: {
    jobId: string; operation: Operation; area: Inspection; result: Result; personId: string
  },
): Promise<void> {
  const words = result.result === 'indication' ? 'shows an indication' : 'was not tested'
  const said = result.note === '' ? '' : ` ${result.note}`
  await client.query(
    `INSERT INTO finding (id, job_id, operation_key, place, source, finding_key, title, sentence, stops, raised_by)
     VALUES ($1, $2, $3, $4, 'person', $5, $6, $7, true, $8)`,
    [
      uuid(), jobId, operation.key, area.place, findingKeyOf(result.id), `${area.title}: ${words.replace('was ', '')}`,
      `${area.title} ${words}.${said}`, personId,
    ],
  )
}
