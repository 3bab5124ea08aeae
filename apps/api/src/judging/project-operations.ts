import type { PoolClient } from 'pg'
import type { Queryable } from '../database/queryable.ts'
import type { Evidence } from './evidence.ts'
import { loadEvidence } from './load-evidence.ts'
import { standingsOf, type OperationState, type Standing } from './standing.ts'

/** What lists show of an operation, as `operation_state` keeps it. */
export interface ProjectedOperation {
  readonly within: number
  readonly not_proven: number
  readonly outside: number
  readonly not_measured: number
  /** Of those not proven or outside, how many a concession covers. */
  readonly conceded: number
  readonly to_see: number
  readonly seen: number
  readonly open_findings: number
  readonly reachable: boolean
  readonly state: OperationState
}

/** The row of one operation, counted from where it stands. */
export function projectionOf(standing: Standing): ProjectedOperation {
  const { operation, verdicts } = standing
  // An area to test and a lot to type are looked at as well.
  const toSee = operation.observations.length + (operation.inspections ?? []).length + (operation.lots ?? []).length
  const count = (kind: string) => verdicts.filter((verdict) => verdict.kind === kind).length
  return {
    within: count('within'),
    not_proven: count('not-proven'),
    outside: count('outside'),
    not_measured: count('not-measured'),
    conceded: standing.conceded.size,
    to_see: toSee,
    seen: toSee - standing.unseen.length - standing.tests.untested.length - standing.tests.unsound.length - standing.lotless.length,
    open_findings: standing.openFindings,
    reachable: standing.waitsFor.length === 0,
    state: standing.state,
  }
}

/** The rows as they are kept, by operation key. */
export async function loadProjection(
  database: Queryable, jobId: string,
): Promise<Map<string, ProjectedOperation>> {
  const { rows } = await database.query<ProjectedOperation & { operation_key: string }>(
    `SELECT operation_key, within, not_proven, outside, not_measured, conceded, to_see, seen, open_findings,
            reachable, state
       FROM operation_state WHERE job_id = $1`,
    [jobId],
  )
  return new Map(rows.map(({ operation_key, ...row }) => [operation_key, row]))
}

/** Names of the figures in which two rows differ. */
export function differences(
  one: ProjectedOperation, other: ProjectedOperation,
): (keyof ProjectedOperation)[] {
  return (Object.keys(one) as (keyof ProjectedOperation)[]).filter((key) => one[key] !== other[key])
}

/**
 * Judges the job as this transaction sees it and writes the rows of `operation_state` that changed. Called at
 * the end of every command that touches what an operation counts.
 * @returns what was judged, so that nobody has to load it twice
 */
export async function projectOperations(
  client: PoolClient, jobId: string,
): Promise<{ evidence: Evidence; standings: Standing[] }> {
  const evidence = await loadEvidence(client, jobId)
  const standings = standingsOf(evidence)
  const kept = await loadProjection(client, jobId)
  const changed = standings.flatMap((standing) => {
    const row = projectionOf(standing)
    const before = kept.get(standing.operation.key)
    return before !== undefined && differences(row, before).length === 0
      ? []
      : [{ operation_key: standing.operation.key, ...row }]
  })
  if (changed.length > 0) await write(client, jobId, changed)
  return { evidence, standings }
}

async function write(
  client: PoolClient, jobId: string, rows: readonly (ProjectedOperation & { operation_key: string })[],
): Promise<void> {
  await client.query(
    `UPDATE operation_state AS kept
        SET within = fresh.within, not_proven = fresh.not_proven, outside = fresh.outside,
            not_measured = fresh.not_measured, conceded = fresh.conceded, to_see = fresh.to_see,
            seen = fresh.seen,
            open_findings = fresh.open_findings, reachable = fresh.reachable, state = fresh.state
       FROM json_populate_recordset(NULL::operation_state, $2) AS fresh
      WHERE kept.job_id = $1 AND kept.operation_key = fresh.operation_key`,
    [jobId, JSON.stringify(rows)],
  )
}
