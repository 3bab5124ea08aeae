import type { Queryable } from '../database/queryable.ts'
import { ServiceError } from '../http/problem.ts'

/** What every page about a job begins with. */
export interface JobHead {
  readonly id: string
  readonly number: number
  readonly state: 'open' | 'handed-over'
  readonly engineName: string
  readonly duty: string
  readonly planRevision: number
}

/** The job of that number or id. @throws ServiceError `not-found` */
export async function findJob(
  database: Queryable, { id = null, number = null }: { id?: string | null; number?: number | null },
): Promise<JobHead> {
  const { rows: [job] } = await database.query<JobHead>(
    `SELECT job.id, job.number, job.state, engine.name AS "engineName", job.duty,
            job.plan_revision AS "planRevision"
       FROM job JOIN engine ON engine.id = job.engine_id
      WHERE job.id = $1 OR job.number = $2`,
    [id, number],
  )
  if (job === undefined) throw new ServiceError('not-found', 'There is no such job.')
  return job
}
