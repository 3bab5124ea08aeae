import type { JobSummary } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'

export type WireSummary = z.infer<typeof JobSummary>

/** Summaries of these jobs in the order of their ids, whatever their number: one statement. `today` is the shop's. */
export async function readSummaries(database: Queryable, jobIds: readonly string[], today: string): Promise<WireSummary[]> {
  const { rows } = await database.query<WireSummary>(
    `SELECT job.id, job.number, customer.name AS "customerName", engine.name AS "engineName", job.duty, job.work,
            job.promised_on AS "promisedOn", job.state, progress.stage, progress.operations, progress.signed,
            (SELECT count(*)::int FROM finding WHERE finding.job_id = job.id AND finding.state = 'open') AS "openFindings",
            job.state = 'open' AND job.promised_on < $2::date AS late
     FROM unnest($1::uuid[]) WITH ORDINALITY AS wanted (id, place)
     JOIN job ON job.id = wanted.id
     JOIN customer ON customer.id = job.customer_id
     JOIN engine ON engine.id = job.engine_id
     CROSS JOIN LATERAL (
       SELECT count(*)::int AS operations,
              (count(*) FILTER (WHERE state = 'signed'))::int AS signed,
              (array_agg(stage ORDER BY ordinal) FILTER (WHERE state <> 'signed'))[1] AS stage
       FROM operation_state WHERE operation_state.job_id = job.id
     ) AS progress
     ORDER BY wanted.place`,
    [jobIds, today],
  )
  return rows
}
