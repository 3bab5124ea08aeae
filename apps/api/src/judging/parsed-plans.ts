import type { Plan } from '@tenths/domain'
import type { Queryable } from '../database/queryable.ts'

/** A parsed plan takes about a megabyte, and the benches work on some dozens of jobs at once. */
const MOST_KEPT = 64

/** Parsed plans by the digest of their text, the one used longest ago first. */
const kept = new Map<string, Plan>()

/**
 * The plan of that revision, parsed once: every reading needs it, and its text never changes. It is known by the digest of
 * the text and not by its revision, which a transaction that is rolled back gives away again. The digest only names what
 * is kept here; what was sealed is checked with SHA-256.
 */
export async function readPlanText(
  database: Queryable, jobId: string, { revision, digest }: { revision: number; digest: string },
): Promise<Plan> {
  const key = `${jobId} ${digest}`
  const plan = kept.get(key) ?? await parse(database, jobId, revision)
  kept.delete(key)
  kept.set(key, plan)
  const oldest = kept.keys().next()
  if (kept.size > MOST_KEPT && oldest.done === false) kept.delete(oldest.value)
  return plan
}

async function parse(database: Queryable, jobId: string, revision: number): Promise<Plan> {
  const { rows: [row] } = await database.query<{ plan: string }>(
    'SELECT plan FROM plan_revision WHERE job_id = $1 AND revision = $2', [jobId, revision],
  )
  if (row === undefined) throw new Error(`Job ${jobId} has no plan ${revision}.`)
  return JSON.parse(row.plan) as Plan
}
