import type { ObservationState } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'

export type WireObservation = z.infer<typeof ObservationState>

/** The latest tick of each thing to be seen: of one operation, or of all when `operationKey` is null. */
export async function loadObservations(
  database: Queryable, jobId: string, operationKey: string | null,
): Promise<(WireObservation & { operationKey: string })[]> {
  const { rows } = await database.query<Omit<WireObservation, 'observedAt' | 'since'> & {
    operationKey: string; observedAt: Date; since: Date | null
  }>(
    `SELECT DISTINCT ON (observation.operation_key, observation.item)
            observation.operation_key AS "operationKey", observation.item, observation.outcome,
            observation.note, observation.since,
            person.name AS by, observation.observed_at AS "observedAt"
       FROM observation JOIN person ON person.id = observation.person_id
      WHERE observation.job_id = $1 AND ($2::text IS NULL OR observation.operation_key = $2)
      ORDER BY observation.operation_key, observation.item, observation.ordinal DESC`,
    [jobId, operationKey],
  )
  return rows.map((row) => ({
    ...row, observedAt: row.observedAt.toISOString(), since: row.since?.toISOString() ?? null,
  }))
}
