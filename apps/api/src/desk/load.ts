import type { readDesk } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'
import { expected, expectedMinutes } from './pace.ts'

type Desk = z.input<(typeof readDesk)['answer']>

/**
 * Minutes to expect of what is unsigned in all open jobs, by kind of bench: what can be done now, and what waits for earlier steps.
 */
export async function loadPerBench(database: Queryable): Promise<Desk['load']> {
  const { rows } = await database.query<Desk['load'][number]>(
    `WITH ${expected}
     SELECT open.bench_kind AS "benchKind",
            (SELECT count(*) FROM bench WHERE bench.kind = open.bench_kind)::integer AS benches,
            coalesce(round(sum(${expectedMinutes('open')}) FILTER (WHERE open.reachable)), 0)::integer AS "readyMinutes",
            coalesce(round(sum(${expectedMinutes('open')}) FILTER (WHERE NOT open.reachable)), 0)::integer AS "waitingMinutes",
            count(*)::integer AS operations
       FROM operation_state AS open
       JOIN job ON job.id = open.job_id AND job.state = 'open'
       LEFT JOIN expected ON expected.operation_key = open.operation_key
      WHERE open.state <> 'signed'
      GROUP BY open.bench_kind
      ORDER BY sum(${expectedMinutes('open')}) DESC, open.bench_kind`,
  )
  return rows
}

/** What an open job still has to do, and by when. */
export interface OpenJob {
  readonly id: string
  readonly promisedOn: string
  readonly remainingMinutes: number
}

/** Every open job with the minutes to expect of its unsigned steps, the nearest promise first. */
export async function loadOpenJobs(database: Queryable): Promise<OpenJob[]> {
  const { rows } = await database.query<OpenJob>(
    `WITH ${expected}
     SELECT job.id, job.promised_on AS "promisedOn",
            coalesce(round(sum(${expectedMinutes('operation_state')}) FILTER (WHERE operation_state.state <> 'signed')), 0)::integer
              AS "remainingMinutes"
       FROM job
       LEFT JOIN operation_state ON operation_state.job_id = job.id
       LEFT JOIN expected ON expected.operation_key = operation_state.operation_key
      WHERE job.state = 'open'
      GROUP BY job.id
      ORDER BY job.promised_on, job.number`,
  )
  return rows
}
