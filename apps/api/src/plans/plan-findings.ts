import type { PlanFinding } from '@tenths/domain'
import type { PoolClient } from 'pg'
import { v7 as uuid } from 'uuid'

/**
 * Raises what a plan found, once for each thing that it found: what the owner knows already, decided or not,
 * is left as it is. Open findings that the new plan finds no more are withdrawn.
 */
export async function raisePlanFindings(
  client: PoolClient, jobId: string, findings: readonly PlanFinding[],
): Promise<void> {
  await client.query(
    `UPDATE finding SET state = 'withdrawn'
      WHERE job_id = $1 AND source = 'plan' AND state = 'open' AND finding_key <> ALL ($2)`,
    [jobId, findings.map(({ key }) => key)],
  )
  const rows = findings.map(({ key, severity, title, sentence, worked, remedy }) => ({
    id: uuid(), finding_key: key, title, stops: severity === 'stops',
    sentence: [sentence, ...worked, remedy].filter((line) => line !== '').join('\n'),
  }))
  await client.query(
    `INSERT INTO finding (id, job_id, source, finding_key, title, sentence, stops)
     SELECT fresh.id, $1, 'plan', fresh.finding_key, fresh.title, fresh.sentence, fresh.stops
       FROM json_populate_recordset(NULL::finding, $2) AS fresh
      WHERE NOT EXISTS (
              SELECT FROM finding AS known
               WHERE known.job_id = $1 AND known.source = 'plan' AND known.finding_key = fresh.finding_key
                 AND known.state <> 'withdrawn')`,
    [jobId, JSON.stringify(rows)],
  )
}
