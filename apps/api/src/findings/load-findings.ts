import type { Finding } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'

export type WireFinding = z.infer<typeof Finding>

interface FindingRow extends Omit<WireFinding, 'raisedAt' | 'decision'> {
  readonly raisedAt: Date
  readonly decision: NonNullable<WireFinding['decision']>['decision'] | null
  readonly decisionReason: string | null
  readonly low: number | null
  readonly high: number | null
  readonly decidedBy: string | null
  readonly decidedAt: Date | null
}

/** Photographs of the finding itself, and of the area whose result raised it. */
const ofFinding = `
  photograph.job_id = finding.job_id
  AND ((photograph.subject = 'finding' AND photograph.subject_key = finding.id::text)
    OR (photograph.subject = 'inspection'
      AND EXISTS (SELECT FROM inspection
                   WHERE finding.finding_key = 'inspection/' || inspection.id
                     AND inspection.job_id = photograph.job_id
                     AND inspection.operation_key = photograph.operation_key
                     AND inspection.item = photograph.subject_key)))`

/** Which findings: each that is named narrows them. */
export interface FindingFilter {
  readonly id?: string
  readonly jobId?: string
  readonly operationKey?: string
  readonly state?: 'open' | 'decided'
}

/**
 * Findings with what the owner decided, the oldest first. Withdrawn ones only where a single one is asked
 * for.
 */
export async function loadFindings(database: Queryable, filter: FindingFilter): Promise<WireFinding[]> {
  const { rows } = await database.query<FindingRow>(
    `SELECT finding.id, finding.job_id AS "jobId", job.number AS "jobNumber", engine.name AS "engineName",
            finding.operation_key AS "operationKey", operation_state.title AS "operationTitle",
            finding.requirement_key AS "requirementKey", finding.source, finding.title, finding.sentence,
            finding.stops,
            finding.state, raiser.name AS "raisedBy", finding.raised_at AS "raisedAt",
            decision.decision, decision.reason AS "decisionReason", decision.low, decision.high,
            decider.name AS "decidedBy", decision.decided_at AS "decidedAt",
            coalesce(taken.photographs, '[]') AS photographs
       FROM finding
       JOIN job ON job.id = finding.job_id
       JOIN engine ON engine.id = job.engine_id
       LEFT JOIN operation_state
         ON operation_state.job_id = finding.job_id AND operation_state.operation_key = finding.operation_key
       LEFT JOIN person AS raiser ON raiser.id = finding.raised_by
       LEFT JOIN finding_decision AS decision ON decision.finding_id = finding.id
       LEFT JOIN person AS decider ON decider.id = decision.decided_by
       LEFT JOIN LATERAL (
              SELECT json_agg(json_build_object(
                       'id', photograph.id, 'operationKey', photograph.operation_key, 'subject', photograph.subject,
                       'subjectKey', photograph.subject_key, 'caption', photograph.caption,
                       'sha256', photograph.sha256, 'by', taker.name, 'takenAt', photograph.taken_at)
                       ORDER BY photograph.taken_at, photograph.id) AS photographs
                FROM photograph JOIN person AS taker ON taker.id = photograph.person_id
               WHERE ${ofFinding}
            ) AS taken ON true
      WHERE ($1::uuid IS NULL OR finding.id = $1)
        AND ($2::uuid IS NULL OR finding.job_id = $2)
        AND ($3::text IS NULL OR finding.operation_key = $3)
        AND ($4::text IS NULL OR finding.state = $4)
        AND ($1::uuid IS NOT NULL OR finding.state <> 'withdrawn')
      ORDER BY finding.raised_at, finding.id`,
    [filter.id ?? null, filter.jobId ?? null, filter.operationKey ?? null, filter.state ?? null],
  )
  return rows.map(({ decision, decisionReason, low, high, decidedBy, decidedAt, raisedAt, photographs, ...finding }) => ({
    ...finding,
    photographs: photographs.map((one) => ({ ...one, takenAt: new Date(one.takenAt).toISOString() })),
    raisedAt: raisedAt.toISOString(),
    decision: decision === null || decisionReason === null || decidedBy === null || decidedAt === null
      ? null
      : { decision, reason: decisionReason, low, high, by: decidedBy, at: decidedAt.toISOString() },
  }))
}

/** One finding that is known to exist. */
export async function loadFinding(database: Queryable, id: string): Promise<WireFinding> {
  const [finding] = await loadFindings(database, { id })
  if (finding === undefined) throw new Error(`There is no finding ${id}.`)
  return finding
}
