import type { Bench, QueueEntry } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'
import { ServiceError } from '../http/problem.ts'
import { operationColumns } from '../jobs/job-operations.ts'

type WireBench = z.infer<typeof Bench>
type WireEntry = z.infer<typeof QueueEntry>

/** What can be taken in hand: the steps before it are signed and it is not. */
const waits = `operation_state.reachable AND operation_state.state <> 'signed'`

/** The benches by name, each with how many operations wait for its kind; one statement. */
export async function listBenches(database: Queryable, benchId: string | null = null): Promise<WireBench[]> {
  const { rows } = await database.query<WireBench>(
    `SELECT bench.id, bench.name, bench.kind, coalesce(waiting.operations, 0)::int AS waiting
     FROM bench
     LEFT JOIN (
       SELECT bench_kind, count(*) AS operations
       FROM operation_state JOIN job ON job.id = operation_state.job_id AND job.state = 'open'
       WHERE ${waits}
       GROUP BY bench_kind
     ) AS waiting ON waiting.bench_kind = bench.kind
     WHERE $1::uuid IS NULL OR bench.id = $1
     ORDER BY bench.name`,
    [benchId],
  )
  return rows
}

/**
 * One bench and everything that is still to be done at benches of its kind: what can be done first, among that what is
 * begun or open again, then the nearest promise; two statements.
 * @throws ServiceError `not-found`
 */
export async function readQueue(
  database: Queryable, benchId: string, today: string,
): Promise<{ bench: WireBench; entries: WireEntry[] }> {
  const [bench] = await listBenches(database, benchId)
  if (bench === undefined) throw new ServiceError('not-found', 'There is no such bench.')
  const { rows } = await database.query<WireEntry>(
    `SELECT ${operationColumns}, job.id AS "jobId", job.number AS "jobNumber", engine.name AS "engineName",
            job.promised_on AS "promisedOn", job.promised_on < $2::date AS late
     FROM operation_state
     JOIN job ON job.id = operation_state.job_id AND job.state = 'open'
     JOIN engine ON engine.id = job.engine_id
     WHERE operation_state.bench_kind = $1 AND operation_state.state <> 'signed'
     ORDER BY operation_state.reachable DESC, operation_state.state IN ('re-opened', 'under-way') DESC,
              job.promised_on, job.number, operation_state.ordinal
     LIMIT 500`,
    [bench.kind, today],
  )
  return { bench, entries: rows }
}
