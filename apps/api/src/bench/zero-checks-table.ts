import type { PoolClient } from 'pg'

/** What a gauge showed on its setting after it was read, in nanometres off zero. */
export interface NewZeroCheck {
  readonly id: string
  readonly jobId: string
  readonly gaugeId: string
  readonly deviation: number
  readonly typed: string
  readonly allowed: number
  readonly personId: string
  readonly deviceId: string | null
}

/** A zero check that is kept already, and of how many passes it speaks; null for a new one. */
export async function loadZeroCheck(
  client: PoolClient, id: string,
): Promise<Pick<NewZeroCheck, 'jobId' | 'gaugeId' | 'deviation' | 'allowed'> & { passes: number } | null> {
  const { rows: [row] } = await client.query<
    Pick<NewZeroCheck, 'jobId' | 'gaugeId' | 'deviation' | 'allowed'> & { passes: number }
  >(
    `SELECT job_id AS "jobId", gauge_id AS "gaugeId", deviation, allowed,
            (SELECT count(*)::integer FROM zero_check_pass WHERE zero_check_id = zero_check.id) AS passes
       FROM zero_check WHERE id = $1`,
    [id],
  )
  return row ?? null
}

/**
 * Passes read on a setting of which no zero check speaks that came after their last reading: a check speaks of what was
 * there to be read, whatever the clocks say of a reading on its way.
 */
const unchecked = `
  pass.setting_size IS NOT NULL
  AND EXISTS (SELECT FROM reading
               WHERE reading.pass_id = pass.id
                 AND NOT EXISTS (SELECT FROM zero_check_pass AS spoken
                                   JOIN zero_check ON zero_check.id = spoken.zero_check_id
                                  WHERE spoken.pass_id = pass.id AND zero_check.checked_at >= reading.taken_at))`

/** What a gauge read on a job since it was last put back on its setting. */
export async function passesSinceGoodZero(client: PoolClient, jobId: string, gaugeId: string): Promise<string[]> {
  const { rows } = await client.query<{ id: string }>(
    `SELECT id FROM pass WHERE job_id = $1 AND gauge_id = $2 AND ${unchecked} ORDER BY opened_at, id`, [jobId, gaugeId],
  )
  return rows.map(({ id }) => id)
}

export async function readingsOf(client: PoolClient, passIds: readonly string[]): Promise<string[]> {
  const { rows } = await client.query<{ id: string }>('SELECT id FROM reading WHERE pass_id = ANY ($1)', [passIds])
  return rows.map(({ id }) => id)
}

/** Steps of other open jobs on which a gauge read and was not put back on its setting since. */
export async function readElsewhere(
  client: PoolClient, jobId: string, gaugeId: string,
): Promise<{ jobNumber: number; operationKey: string; operationTitle: string }[]> {
  const { rows } = await client.query<{ jobNumber: number; operationKey: string; operationTitle: string }>(
    `SELECT DISTINCT job.number AS "jobNumber", pass.operation_key AS "operationKey",
            coalesce(operation_state.title, pass.operation_key) AS "operationTitle"
       FROM pass
       JOIN job ON job.id = pass.job_id AND job.state = 'open'
       LEFT JOIN operation_state
         ON operation_state.job_id = pass.job_id AND operation_state.operation_key = pass.operation_key
      WHERE pass.gauge_id = $2 AND pass.job_id <> $1 AND ${unchecked}
      ORDER BY 1, 2`,
    [jobId, gaugeId],
  )
  return rows
}

export async function insertZeroCheck(
  client: PoolClient, { id, jobId, gaugeId, deviation, typed, allowed, personId, deviceId }: NewZeroCheck,
  passIds: readonly string[],
): Promise<void> {
  await client.query(
    `INSERT INTO zero_check (id, job_id, gauge_id, deviation, typed, allowed, person_id, device_id)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8)`,
    [id, jobId, gaugeId, deviation, typed, allowed, personId, deviceId],
  )
  await client.query(
    'INSERT INTO zero_check_pass (zero_check_id, pass_id) SELECT $1, unnest($2::uuid[])', [id, passIds],
  )
}
