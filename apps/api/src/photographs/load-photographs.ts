import type { Photograph } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'

export type WirePhotograph = z.infer<typeof Photograph>

/** Which photographs: each that is named narrows them. */
export interface PhotographFilter {
  readonly id?: string
  readonly jobId?: string
  readonly operationKey?: string
}

/** Photographs without their bytes, the oldest first. */
export async function loadPhotographs(database: Queryable, filter: PhotographFilter): Promise<WirePhotograph[]> {
  const { rows } = await database.query<Omit<WirePhotograph, 'takenAt'> & { takenAt: Date }>(
    `SELECT photograph.id, photograph.operation_key AS "operationKey", photograph.subject,
            photograph.subject_key AS "subjectKey", photograph.caption, photograph.sha256, person.name AS by,
            photograph.taken_at AS "takenAt"
       FROM photograph JOIN person ON person.id = photograph.person_id
      WHERE ($1::uuid IS NULL OR photograph.id = $1)
        AND ($2::uuid IS NULL OR photograph.job_id = $2)
        AND ($3::text IS NULL OR photograph.operation_key = $3)
      ORDER BY photograph.taken_at, photograph.id`,
    [filter.id ?? null, filter.jobId ?? null, filter.operationKey ?? null],
  )
  return rows.map((row) => ({ ...row, takenAt: row.takenAt.toISOString() }))
}

/** A photograph as it is sealed. */
export interface SealedPhotograph {
  readonly id: string
  readonly sha256: string
  readonly subject: string
  readonly subjectKey: string
}

/** What a signature on a step seals of the photographs of its records. */
export async function loadSealedPhotographs(
  database: Queryable, jobId: string, operationKey: string,
): Promise<SealedPhotograph[]> {
  const { rows } = await database.query<SealedPhotograph>(
    `SELECT id, sha256, subject, subject_key AS "subjectKey"
       FROM photograph WHERE job_id = $1 AND operation_key = $2 ORDER BY id`,
    [jobId, operationKey],
  )
  return rows
}
