import type { JudgeSettings, Plan } from '@tenths/domain'
import type { Queryable } from '../database/queryable.ts'
import { loadLatestInspections } from '../inspections/load-inspections.ts'
import type { Evidence, KnownSignOff, LatestObservation, LiveConcession, OpenFinding } from './evidence.ts'
import { loadPasses } from './load-passes.ts'
import { loadPlaced } from './load-placed.ts'
import { readPlanText } from './parsed-plans.ts'

/**
 * Loads all that a job is judged from, in the same few statements however large the job is. One after the
 * other: a client inside a transaction has one line to the database.
 */
export async function loadEvidence(database: Queryable, jobId: string): Promise<Evidence> {
  const { planRevision, plan, settings } = await loadPlan(database, jobId)
  return {
    jobId,
    planRevision,
    plan,
    settings,
    placed: await loadPlaced(database, jobId),
    passes: await loadPasses(database, jobId),
    observations: await loadLatestObservations(database, jobId),
    inspections: await loadLatestInspections(database, jobId),
    concessions: await loadLiveConcessions(database, jobId),
    signOffs: await loadSignOffs(database, jobId),
    openFindings: await loadOpenFindings(database, jobId),
    worked: await loadWorked(database, jobId),
  }
}

/** The plan in force and the shop's settings for all verdicts. */
export async function loadPlan(
  database: Queryable, jobId: string,
): Promise<{ planRevision: number; plan: Plan; settings: JudgeSettings }> {
  const { rows: [row] } = await database.query<
    { revision: number; written: string; coverage_factor: number; unit: JudgeSettings['unit'] }
  >(
    `SELECT plan_revision.revision, plan_revision.xmin::text AS written, shop.coverage_factor, shop.unit
       FROM job
       JOIN plan_revision ON plan_revision.job_id = job.id AND plan_revision.revision = job.plan_revision
      CROSS JOIN shop
      WHERE job.id = $1`,
    [jobId],
  )
  if (row === undefined) throw new Error(`Job ${jobId} has no plan in force.`)
  return {
    planRevision: row.revision,
    plan: await readPlanText(database, jobId, row),
    settings: { coverageFactor: row.coverage_factor, unit: row.unit },
  }
}

async function loadLatestObservations(database: Queryable, jobId: string): Promise<LatestObservation[]> {
  const { rows } = await database.query<LatestObservation>(
    `SELECT DISTINCT ON (operation_key, item)
            id, operation_key AS "operationKey", item, outcome, note, since, person_id AS "personId"
       FROM observation
      WHERE job_id = $1
      ORDER BY operation_key, item, ordinal DESC`,
    [jobId],
  )
  return rows
}

/** A concession ends when the owner later decides otherwise about the same requirement. */
async function loadLiveConcessions(database: Queryable, jobId: string): Promise<LiveConcession[]> {
  const { rows } = await database.query<LiveConcession>(
    `SELECT decision.finding_id AS "findingId", decision.requirement_key AS requirement, decision.low,
            decision.high,
            decision.reason, person.name AS by
       FROM finding_decision AS decision
       JOIN person ON person.id = decision.decided_by
      WHERE decision.job_id = $1
        AND decision.decision = 'concession'
        AND decision.requirement_key IS NOT NULL
        AND NOT EXISTS (
              SELECT FROM finding_decision AS later
               WHERE later.job_id = decision.job_id
                 AND later.requirement_key = decision.requirement_key
                 AND later.decision <> 'concession'
                 AND later.decided_at > decision.decided_at)
      ORDER BY decision.decided_at, decision.finding_id`,
    [jobId],
  )
  return rows
}

/** Every sign-off of the job, and whether it still counts, in the order of their seals. */
export async function loadSignOffs(database: Queryable, jobId: string): Promise<KnownSignOff[]> {
  const { rows } = await database.query<KnownSignOff>(
    `SELECT sign_off.id, sign_off.operation_key AS "operationKey",
            sign_off.definition_hash AS "definitionHash",
            re_opening.sign_off_id IS NULL AS live
       FROM sign_off
       LEFT JOIN re_opening ON re_opening.sign_off_id = sign_off.id
      WHERE sign_off.job_id = $1
      ORDER BY sign_off.seal_number`,
    [jobId],
  )
  return rows
}

async function loadOpenFindings(database: Queryable, jobId: string): Promise<OpenFinding[]> {
  const { rows } = await database.query<OpenFinding>(
    `SELECT operation_key AS "operationKey", title, stops
       FROM finding
      WHERE job_id = $1 AND state = 'open'
      ORDER BY raised_at, id`,
    [jobId],
  )
  return rows
}

async function loadWorked(database: Queryable, jobId: string): Promise<string[]> {
  const { rows } = await database.query<{ key: string }>(
    'SELECT DISTINCT operation_key AS key FROM work_time WHERE job_id = $1 ORDER BY key', [jobId],
  )
  return rows.map(({ key }) => key)
}
