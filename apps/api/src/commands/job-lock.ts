import type { PoolClient } from 'pg'
import { ServiceError } from '../http/problem.ts'

/** The mutable head of a job, locked until the transaction ends. */
export interface LockedJob {
  readonly id: string
  readonly number: number
  readonly engineId: string
  readonly state: 'open' | 'handed-over'
  readonly planRevision: number
  readonly sealCount: number
  readonly sealHead: string
  readonly version: number
}

/**
 * Locks a job, so that commands on one job queue. Foreign keys to it do not wait (FOR NO KEY UPDATE).
 * @throws ServiceError `not-found`; `job-closed` when it is handed over, unless `closed` is `allowed`.
 */
export async function lockJob(
  client: PoolClient, jobId: string, closed: 'refused' | 'allowed' = 'refused',
): Promise<LockedJob> {
  const { rows } = await client.query<LockedJob>(
    `SELECT id, number, engine_id AS "engineId", state, plan_revision AS "planRevision", seal_count AS "sealCount",
            seal_head AS "sealHead", version
     FROM job WHERE id = $1 FOR NO KEY UPDATE`,
    [jobId],
  )
  const job = rows[0]
  if (job === undefined) throw new ServiceError('not-found', 'There is no such job.')
  if (job.state === 'handed-over' && closed === 'refused') {
    throw new ServiceError('job-closed', `Job ${job.number} is handed over. The owner can open it again.`)
  }
  return job
}
