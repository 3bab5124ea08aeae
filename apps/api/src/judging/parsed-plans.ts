import type { Plan } from '@tenths/domain'
import type { Queryable } from '../database/queryable.ts'

/** A parsed plan takes about a megabyte, and the benches work on some dozens of jobs at once. */
const MOST_KEPT = 64

/** Parsed plans, the one used longest ago first. */
const kept = new Map<string, Plan>()

/**
 * The plan of that revision, parsed once: every reading needs it, and its text never changes. A transaction that is rolled
 * back gives its revision away again, so it is known by the transaction that wrote its row (`xmin`) as well.
 */
export async function readPlanText(
  database: Queryable, jobId: string, { revision, written }: { revision: number; written: string },
): Promise<Plan> {
  const key = `${jobId} ${revision} ${written}`
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
