import { randomUUID } from 'node:crypto'
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

/** Minutes of one stretch of work, for SQL. A clock that was forgotten counts for one shift of 12 hours at most. */
export const minutesWorked = `extract(epoch FROM
  least(coalesce(work_time.stopped_at, now()), work_time.started_at + interval '12 hours') - work_time.started_at) / 60`

/**
 * Goes on with a person's work on an operation, or pauses it. A person works at one thing: starting stops what still
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

/** When something was done by a device's clock, and how far that was behind the server's; now where it does not say. */
export interface DeviceMoment {
  readonly deviceAt?: string | null | undefined
  readonly deviceOffset?: number | null | undefined
}

/** A moment of a device by the server's clock, for SQL; now when the device does not say when. */
const byServerClock = (deviceAt: string, deviceOffset: string): string =>
  `least(now(), ${deviceAt}::timestamptz + coalesce(${deviceOffset}, 0) * interval '1 millisecond')`

/**
 * Has a person work on an operation since a value or tick of theirs, unless they did already: nobody touches a clock to
 * begin. What waited on a device counts from when it was typed; what waited longer than a shift tells nothing of now.
 */
export async function beginWork(
  client: PoolClient, { jobId, operationKey, personId }: Omit<Turn, 'id'>, typed: DeviceMoment,
): Promise<void> {
  const { rows: [moment] } = await client.query<{ at: Date; isWorking: boolean }>(
    `SELECT at, EXISTS (SELECT FROM work_time
                         WHERE person_id = $1 AND job_id = $2 AND operation_key = $3
                           AND started_at <= at + $5::interval AND (stopped_at IS NULL OR stopped_at >= at)) AS "isWorking"
       FROM (SELECT ${byServerClock('$4', '$6')} AS at) AS moment
      WHERE at > now() - interval '12 hours'`,
    [personId, jobId, operationKey, typed.deviceAt ?? null, slack, typed.deviceOffset ?? null],
  )
  if (moment === undefined || moment.isWorking) return
  await start(client, { id: randomUUID(), jobId, operationKey, personId }, moment.at)
}

/** When the first of these was typed, by the device's clock; null when none says so. */
export function earliest(typed: readonly { readonly deviceAt?: string | null | undefined }[]): string | null {
  const moments = typed.flatMap(({ deviceAt }) => deviceAt ?? [])
  return moments.length === 0 ? null : moments.reduce((one, other) => (Date.parse(other) < Date.parse(one) ? other : one))
}

/** Ends everybody's work on an operation as of a moment: it was marked as signed then. */
export async function endWorkAsOf(
  client: PoolClient, jobId: string, operationKey: string, { deviceAt, deviceOffset }: DeviceMoment,
): Promise<void> {
  await client.query(
    `UPDATE work_time SET stopped_at = marked.at
       FROM (SELECT ${byServerClock('$3', '$4')} AS at) AS marked
      WHERE job_id = $1 AND operation_key = $2 AND stopped_at IS NULL AND started_at <= marked.at`,
    [jobId, operationKey, deviceAt ?? null, deviceOffset ?? null],
  )
}

/** Ends everybody's work on an operation: it is signed. */
export async function endWork(client: PoolClient, jobId: string, operationKey: string): Promise<void> {
  await client.query(
    'UPDATE work_time SET stopped_at = now() WHERE job_id = $1 AND operation_key = $2 AND stopped_at IS NULL',
    [jobId, operationKey],
  )
}

/** Pauses the work of these people, wherever their clocks run: they hand the device back. */
export async function pauseWork(client: PoolClient, personIds: readonly string[]): Promise<void> {
  await client.query(
    'UPDATE work_time SET stopped_at = now() WHERE person_id = ANY ($1) AND stopped_at IS NULL', [personIds],
  )
}

/** Longest that a touch may have waited and still count from when it was made. */
const longestWait = '7 days'

/**
 * Keeps a touch on the clock.
 * @returns when it counts as made by the server's clock; null when it is known already
 */
async function keepTurn(
  client: PoolClient, { id, jobId, operationKey, personId }: Turn,
  { action, deviceAt, deviceOffset }: DeviceMoment & Pick<CommandInput<Route>['body'], 'action'>,
): Promise<Date | null> {
  const { rows: [kept] } = await client.query<{ at: Date }>(
    `INSERT INTO clock_turn (id, job_id, operation_key, person_id, action, device_at, device_offset, turned_at)
     VALUES ($1, $2, $3, $4, $5, $6, $7, greatest(now() - $8::interval, ${byServerClock('$6', '$7')}))
     ON CONFLICT (id) DO NOTHING
     RETURNING turned_at AS at`,
    [id, jobId, operationKey, personId, action, deviceAt ?? null, deviceOffset ?? null, longestWait],
  )
  return kept?.at ?? null
}

/** Clocks of device and server agree to about a second: what began this much later still counts as before. */
const slack = '30 seconds'

/**
 * What began before ends now; what began later, on another device, ends this one. Of two that the same person begins at
 * the very same moment on two devices, the first one counts.
 */
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
     ON CONFLICT DO NOTHING`,
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
 * Whole minutes that anybody worked on an operation so far, and whether this person works on it now.
 */
export async function timeWorked(
  database: Queryable, jobId: string, operationKey: string, personId: string,
): Promise<{ running: boolean; minutes: number }> {
  const { rows: [row] } = await database.query<{ running: boolean; minutes: number }>(
    `SELECT coalesce(bool_or(person_id = $3 AND stopped_at IS NULL), false) AS running,
            coalesce(floor(sum(${minutesWorked})), 0)::integer AS minutes
       FROM work_time
      WHERE job_id = $1 AND operation_key = $2`,
    [jobId, operationKey, personId],
  )
  return row ?? { running: false, minutes: 0 }
}
