import type { InspectionResult } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'
import type { LatestInspection } from '../judging/evidence.ts'

export type WireInspection = z.infer<typeof InspectionResult>

/** The key of the finding that a result raises: the owner decides about this very result. */
export const findingKeyOf = (inspectionId: string) => `inspection/${inspectionId}`

/** The owner let the part pass as this result found it. */
const isConceded = `
  EXISTS (SELECT FROM finding JOIN finding_decision ON finding_decision.finding_id = finding.id
           WHERE finding.job_id = inspection.job_id
             AND finding.finding_key = 'inspection/' || inspection.id
             AND finding_decision.decision = 'concession')`

/** The latest result of each area of each part of the job, the newest first. */
export async function loadLatestInspections(database: Queryable, jobId: string): Promise<LatestInspection[]> {
  const { rows } = await database.query<LatestInspection>(
    `SELECT latest.id, latest.operation_key AS "operationKey", latest.item, latest.part_id AS "partId",
            latest.method, latest.pressure, latest.result, latest.note,
            latest.inspector_id AS "inspectorId", latest.person_id AS "personId", latest.conceded
       FROM (SELECT DISTINCT ON (operation_key, item, part_id) inspection.*, ${isConceded} AS conceded
               FROM inspection
              WHERE job_id = $1
              ORDER BY operation_key, item, part_id, ordinal DESC) AS latest
      ORDER BY latest.ordinal DESC`,
    [jobId],
  )
  return rows
}

/**
 * Every result of one operation, or of all when `operationKey` is null, the oldest first.
 * @param counting ids of the results that count
 */
export async function loadInspections(
  database: Queryable, jobId: string, operationKey: string | null, counting: ReadonlySet<string>,
): Promise<(WireInspection & { operationKey: string })[]> {
  const { rows } = await database.query<Omit<WireInspection, 'inspectedAt' | 'counts'> & {
    operationKey: string; inspectedAt: Date
  }>(
    `SELECT inspection.id, inspection.operation_key AS "operationKey", inspection.item, part.mark,
            inspection.method, inspection.pressure, inspection.result, inspection.note,
            inspector.name AS inspector, person.name AS by, inspection.inspected_at AS "inspectedAt",
            ${isConceded} AS conceded
       FROM inspection
       JOIN person ON person.id = inspection.person_id
       JOIN person AS inspector ON inspector.id = inspection.inspector_id
       LEFT JOIN part ON part.id = inspection.part_id
      WHERE inspection.job_id = $1 AND ($2::text IS NULL OR inspection.operation_key = $2)
      ORDER BY inspection.ordinal`,
    [jobId, operationKey],
  )
  return rows.map((row) => ({ ...row, inspectedAt: row.inspectedAt.toISOString(), counts: counting.has(row.id) }))
}
