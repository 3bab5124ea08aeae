import type { startWork } from '@tenths/contract'
import type { PoolClient } from 'pg'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import type { Queryable } from '../database/queryable.ts'
import type { Answer } from '../http/register.ts'
import { loadPlan } from '../judging/load-evidence.ts'
import { projectOperations } from '../judging/project-operations.ts'
import { operationOf } from './reach.ts'
import { requireSamePerson } from './same-person.ts'

type Route = typeof startWork

/**
 * Starts or stops a person's clock on an operation. A person works at one thing: starting stops what still
 * ran. A touch that waited on a device counts from when it was made.
 */
export async function runClock(
  { client, person, announce }: CommandContext, { params, body }: CommandInput<Route>,
): Promise<Answer<Route>> {
  const jobId = params.id
  announce({ kind: 'start-work', jobId, operationKey: body.operationKey })
  requireSamePerson(person.id, body.workedBy, 'workedBy')
  await lockJob(client, jobId)
  operationOf((await loadPlan(client, jobId)).plan, body.operationKey)
  const turn = { id: body.id, jobId, operationKey: body.operationKey, personId: person.id }
  const at = await keepTurn(client, turn, body)
  if (at !== null) await (body.action === 'start' ? start(client, turn, at) : stop(client, turn, at))
  await projectOperations(client, jobId)
  return timeWorked(client, jobId, body.operationKey, person.id)
}

interface Turn {
  readonly id: string
  readonly jobId: string
  readonly operationKey: string
  readonly personId: string
}

/** Longest that a touch may have waited and still count from when it was made. */
const longestWait = '7 days'

/**
 * Keeps a touch on the clock.
 * @returns when it counts as made by the server's clock; null when it is known already
 */
async function keepTurn(
  client: PoolClient, { id, jobId, operationKey, personId }: Turn,
  { action, deviceAt, deviceOffset }: Pick<CommandInput<Route>['body'], 'action' | 'deviceAt' | 'deviceOffset'>,
): Promise<Date | null> {
  const { rows: [kept] } = await client.query<{ at: Date }>(
    `INSERT INTO clock_turn (id, job_id, operation_key, person_id, action, device_at, device_offset, turned_at)
     VALUES ($1, $2, $3, $4, $5, $6, $7, least(now(), greatest(
       now() - $8::interval, coalesce($6::timestamptz + coalesce($7, 0) * interval '1 millisecond', now())
     )))
     ON CONFLICT (id) DO NOTHING
     RETURNING turned_at AS at`,
    [id, jobId, operationKey, personId, action, deviceAt ?? null, deviceOffset ?? null, longestWait],
  )
  return kept?.at ?? null
}

/** Clocks of device and server agree to about a second: what began this much later still counts as before. */
const slack = '30 seconds'

/** What began before ends now; what began later, on another device, ends this one. */
async function start(client: PoolClient, { id, jobId, operationKey, personId }: Turn, at: Date): Promise<void> {
  await client.query(
    `UPDATE work_time SET stopped_at = greatest(started_at, $2)
      WHERE person_id = $1 AND started_at <= $2::timestamptz + $3::interval AND (stopped_at IS NULL OR stopped_at > $2)`,
    [personId, at, slack],
  )
  await client.query(
    `INSERT INTO work_time (id, job_id, operation_key, person_id, started_at, stopped_at)
     VALUES ($1, $2, $3, $4, $5, (
       SELECT min(started_at) FROM work_time WHERE person_id = $4 AND started_at > $5::timestamptz + $6::interval
     ))
     ON CONFLICT (id) DO NOTHING`,
    [id, jobId, operationKey, personId, at, slack],
  )
}

async function stop(client: PoolClient, { jobId, operationKey, personId }: Turn, at: Date): Promise<void> {
  await client.query(
    `UPDATE work_time SET stopped_at = greatest(started_at, $4)
      WHERE (stopped_at IS NULL OR stopped_at > $4) AND id = (
        SELECT id FROM work_time
         WHERE person_id = $1 AND job_id = $2 AND operation_key = $3 AND started_at <= $4::timestamptz + $5::interval
         ORDER BY started_at DESC LIMIT 1
      )`,
    [personId, jobId, operationKey, at, slack],
  )
}

/**
 * Whole minutes that anybody worked on an operation so far, and whether this person's clock runs on it now.
 */
export async function timeWorked(
  database: Queryable, jobId: string, operationKey: string, personId: string,
): Promise<{ running: boolean; minutes: number }> {
  const { rows: [row] } = await database.query<{ running: boolean; minutes: number }>(
    `SELECT coalesce(bool_or(person_id = $3 AND stopped_at IS NULL), false) AS running,
            coalesce(floor(extract(epoch FROM sum(coalesce(stopped_at, now()) - started_at)) / 60), 0)::integer AS minutes
       FROM work_time
      WHERE job_id = $1 AND operation_key = $2`,
    [jobId, operationKey, personId],
  )
  return row ?? { running: false, minutes: 0 }
}
