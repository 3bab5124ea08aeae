import { plan, type Plan, type PlanInput } from '@tenths/domain'
import type { PoolClient } from 'pg'
import { projectOperations } from '../judging/project-operations.ts'
import { canonicalText, textHash } from '../seals/canonical.ts'
import { appendSeal } from '../seals/seal.ts'
import { definitionHashes } from './definition-hash.ts'
import { raisePlanFindings } from './plan-findings.ts'

export interface PlanToStore {
  readonly jobId: string
  readonly input: PlanInput
  readonly reason: string
  readonly personId: string
}

/**
 * Computes a plan and makes it the one in force: the next revision as exact text, a seal over that text's
 * hash, what it found, and a row for each operation. The job must be locked by this transaction, or new in
 * it.
 * @throws DomainError `engine-impossible` and its like, as plan()
 */
export async function storePlan(
  client: PoolClient, { jobId, input, reason, personId }: PlanToStore,
): Promise<Plan> {
  const made = plan(input)
  const text = canonicalText(made)
  const { rows: [job] } = await client.query<{ revision: number }>(
    `UPDATE job SET plan_revision = plan_revision + 1, duty = $2 WHERE id = $1 RETURNING plan_revision AS revision`,
    [jobId, input.duty],
  )
  if (job === undefined) throw new Error(`There is no job ${jobId} to plan.`)
  await client.query(
    'INSERT INTO plan_revision (job_id, revision, plan, reason, made_by) VALUES ($1, $2, $3, $4, $5)',
    [jobId, job.revision, text, reason, personId],
  )
  await appendSeal(client, {
    jobId,
    kind: 'plan',
    payload: { revision: job.revision, planHash: textHash(text), reason, person: personId },
  })
  await raisePlanFindings(client, jobId, made.findings)
  await writeOperations(client, jobId, made)
  await projectOperations(client, jobId)
  return made
}

/**
 * One row for each operation of the plan, its counts to be filled by judging; rows of dropped operations go.
 */
async function writeOperations(client: PoolClient, jobId: string, made: Plan): Promise<void> {
  const hashes = definitionHashes(made)
  const rows = made.operations.map(({ key, title, stage, bench, minutes }, ordinal) => ({
    operation_key: key, ordinal, title, stage, bench_kind: bench, minutes, definition_hash: hashes.get(key),
  }))
  await client.query(
    'DELETE FROM operation_state WHERE job_id = $1 AND operation_key <> ALL ($2)',
    [jobId, rows.map(({ operation_key }) => operation_key)],
  )
  await client.query(
    `INSERT INTO operation_state (
       job_id, operation_key, ordinal, title, stage, bench_kind, minutes, definition_hash,
       within, not_proven, outside, not_measured, conceded, to_see, seen, open_findings, reachable, state)
     SELECT $1, operation_key, ordinal, title, stage, bench_kind, minutes, definition_hash,
            0, 0, 0, 0, 0, 0, 0, 0, false, 'waiting'
       FROM json_populate_recordset(NULL::operation_state, $2)
     ON CONFLICT (job_id, operation_key) DO UPDATE SET
       ordinal = excluded.ordinal, title = excluded.title, stage = excluded.stage,
       bench_kind = excluded.bench_kind,
       minutes = excluded.minutes, definition_hash = excluded.definition_hash`,
    [jobId, JSON.stringify(rows)],
  )
}
