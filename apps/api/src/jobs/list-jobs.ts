import type { Queryable } from '../database/queryable.ts'
import { containing } from '../http/search-pattern.ts'
import { readSummaries, type WireSummary } from './job-summary.ts'

const PAGE_SIZE = 25

export interface JobsWanted {
  readonly search: string
  readonly state: 'open' | 'handed-over' | 'all'
  /** From 1. */
  readonly page: number
}

const matching = `
  FROM job
  JOIN customer ON customer.id = job.customer_id
  JOIN engine ON engine.id = job.engine_id
  WHERE ($1 = 'all' OR job.state = $1)
    AND (job.number::text LIKE $2 OR customer.name ILIKE $2 OR engine.name ILIKE $2)`

/**
 * One page of jobs: open ones first, the nearest promise first; then the closed ones, the latest first. Three statements
 * whatever the number of jobs.
 */
export async function listJobs(
  database: Queryable, { search, state, page }: JobsWanted, today: string,
): Promise<{ jobs: WireSummary[]; total: number; pageSize: number }> {
  const values = [state, containing(search)]
  const { rows: ids } = await database.query<{ id: string }>(
    `SELECT job.id ${matching}
     ORDER BY job.state = 'open' DESC, CASE WHEN job.state = 'open' THEN job.promised_on END,
              job.promised_on DESC, job.number
     LIMIT $3 OFFSET $4`,
    [...values, PAGE_SIZE, (page - 1) * PAGE_SIZE],
  )
  const { rows: [count] } = await database.query<{ total: number }>(`SELECT count(*)::int AS total ${matching}`, values)
  return {
    jobs: await readSummaries(database, ids.map(({ id }) => id), today),
    total: count?.total ?? 0,
    pageSize: PAGE_SIZE,
  }
}
