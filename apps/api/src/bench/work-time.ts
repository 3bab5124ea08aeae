import type { startWork } from '@tenths/contract'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import type { Queryable } from '../database/queryable.ts'
import type { Answer } from '../http/register.ts'
import { loadPlan } from '../judging/load-evidence.ts'
import { projectOperations } from '../judging/project-operations.ts'
import { operationOf } from './reach.ts'

type Route = typeof startWork

/**
 * Starts or stops a person's clock on an operation. A person works at one thing: starting stops what still
 * ran.
 */
export async function runClock(
  { client, person, announce }: CommandContext, { params, body }: CommandInput<Route>,
): Promise<Answer<Route>> {
  const jobId = params.id
  announce({ kind: 'start-work', jobId, operationKey: body.operationKey })
  await lockJob(client, jobId)
  operationOf((await loadPlan(client, jobId)).plan, body.operationKey)
  if (body.action === 'start') await start(client, jobId, body, person.id)
  else {
    await client.query(
      `UPDATE work_time SET stopped_at = now()
        WHERE person_id = $1 AND job_id = $2 AND operation_key = $3 AND stopped_at IS NULL`,
      [person.id, jobId, body.operationKey],
    )
  }
  await projectOperations(client, jobId)
  return timeWorked(client, jobId, body.operationKey, person.id)
}

async function start(
  client: CommandContext['client'], jobId: string, { id, operationKey }: { id: string; operationKey: string },
  personId: string,
): Promise<void> {
  const { rowCount } = await client.query('SELECT FROM work_time WHERE id = $1', [id])
  if (rowCount !== 0) return
  await client.query(
    'UPDATE work_time SET stopped_at = now() WHERE person_id = $1 AND stopped_at IS NULL', [personId],
  )
  await client.query(
    'INSERT INTO work_time (id, job_id, operation_key, person_id) VALUES ($1, $2, $3, $4)', [
      id, jobId, operationKey, personId,
    ],
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
