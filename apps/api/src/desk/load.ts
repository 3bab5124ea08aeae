import type { readDesk } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'

type Desk = z.input<(typeof readDesk)['answer']>

/**
 * Unsigned minutes of all open jobs by kind of bench: what can be done now, and what waits for earlier steps.
 */
export async function loadPerBench(database: Queryable): Promise<Desk['load']> {
  const { rows } = await database.query<Desk['load'][number]>(
    `SELECT open.bench_kind AS "benchKind",
            (SELECT count(*) FROM bench WHERE bench.kind = open.bench_kind)::integer AS benches,
            coalesce(sum(open.minutes) FILTER (WHERE open.reachable), 0)::integer AS "readyMinutes",
            coalesce(sum(open.minutes) FILTER (WHERE NOT open.reachable), 0)::integer AS "waitingMinutes",
            count(*)::integer AS operations
       FROM operation_state AS open
       JOIN job ON job.id = open.job_id AND job.state = 'open'
      WHERE open.state <> 'signed'
      GROUP BY open.bench_kind
      ORDER BY sum(open.minutes) DESC, open.bench_kind`,
  )
  return rows
}

/** What an open job still has to do, and by when. */
export interface OpenJob {
  readonly id: string
  readonly promisedOn: string
  readonly remainingMinutes: number
}

/** Every open job with the standard minutes of its unsigned steps, the nearest promise first. */
export async function loadOpenJobs(database: Queryable): Promise<OpenJob[]> {
  const { rows } = await database.query<OpenJob>(
    `SELECT job.id, job.promised_on AS "promisedOn",
            coalesce(sum(operation_state.minutes) FILTER (WHERE operation_state.state <> 'signed'), 0)::integer
              AS "remainingMinutes"
       FROM job
       LEFT JOIN operation_state ON operation_state.job_id = job.id
      WHERE job.state = 'open'
      GROUP BY job.id
      ORDER BY job.promised_on, job.number`,
  )
  return rows
}
