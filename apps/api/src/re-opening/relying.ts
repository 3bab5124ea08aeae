import type { PoolClient } from 'pg'
import type { Queryable } from '../database/queryable.ts'
import type { LiveSignOff } from './re-open.ts'

/**
 * Live sign-offs of a job with the title of what they signed; the title of a step that a new plan dropped is
 * its key.
 */
const live = `
  SELECT sign_off.id, sign_off.operation_key AS "operationKey",
         coalesce(operation_state.title, sign_off.operation_key) AS title
    FROM sign_off
    LEFT JOIN operation_state
      ON operation_state.job_id = sign_off.job_id AND operation_state.operation_key = sign_off.operation_key
   WHERE sign_off.job_id = $1
     AND NOT EXISTS (SELECT FROM re_opening WHERE re_opening.sign_off_id = sign_off.id)`

/** Live sign-offs that relied on one of these readings, which a correction now calls false. */
export async function relyingOnReadings(
  client: PoolClient, jobId: string, readingIds: readonly string[],
): Promise<LiveSignOff[]> {
  const { rows } = await client.query<LiveSignOff>(
    `${live}
       AND EXISTS (SELECT FROM sign_off_reading AS relied
                    WHERE relied.sign_off_id = sign_off.id AND relied.reading_id = ANY ($2))
     ORDER BY sign_off.seal_number`,
    [jobId, readingIds],
  )
  return rows
}

/** A feature of a part that is measured again, and the steps before the one that does so. */
export interface FeatureMeasuredAgain {
  readonly partId: string
  readonly feature: string
  readonly earlierSteps: ReadonlySet<string>
}

/**
 * Live sign-offs that relied on a feature of a part as it was measured before, on a gauge that was set on it, or on
 * what was measured beside it. Steps before the one that measures again keep theirs: what they signed was true of the metal as they
 * found it, and is not made false by the cut that follows.
 */
export async function relyingOnFeature(
  client: PoolClient, jobId: string, { partId, feature, earlierSteps }: FeatureMeasuredAgain,
): Promise<LiveSignOff[]> {
  const { rows } = await client.query<LiveSignOff>(
    `${live}
       AND sign_off.operation_key <> ALL ($4)
       AND EXISTS (SELECT FROM sign_off_reading AS relied
                     JOIN reading ON reading.id = relied.reading_id
                     JOIN pass ON pass.id = reading.pass_id
                    WHERE relied.sign_off_id = sign_off.id
                      AND ((pass.part_id = $2 AND pass.feature = $3)
                        OR (pass.set_on_part_id = $2 AND pass.set_on_feature = $3)
                        OR EXISTS (SELECT FROM pass_beside AS beside
                                    WHERE beside.pass_id = pass.id
                                      AND beside.part_id = $2 AND beside.feature = $3)))
     ORDER BY sign_off.seal_number`,
    [jobId, partId, feature, [...earlierSteps]],
  )
  return rows
}

/**
 * Live sign-offs that relied on any measuring of these parts, or beside them, where they sat until now; and those on
 * these steps.
 */
export async function relyingOnParts(
  client: Queryable, jobId: string, partIds: readonly string[], steps: readonly string[],
): Promise<LiveSignOff[]> {
  const { rows } = await client.query<LiveSignOff>(
    `${live}
       AND (sign_off.operation_key = ANY ($3)
         OR EXISTS (SELECT FROM sign_off_reading AS relied
                      JOIN reading ON reading.id = relied.reading_id
                      JOIN pass ON pass.id = reading.pass_id
                     WHERE relied.sign_off_id = sign_off.id
                       AND (pass.part_id = ANY ($2) OR pass.set_on_part_id = ANY ($2)
                         OR EXISTS (SELECT FROM pass_beside AS beside
                                     WHERE beside.pass_id = pass.id AND beside.part_id = ANY ($2)))))
     ORDER BY sign_off.seal_number`,
    [jobId, partIds, steps],
  )
  return rows
}

/** The live sign-offs of these operations. */
export async function signaturesOn(
  client: PoolClient, jobId: string, operationKeys: readonly string[],
): Promise<LiveSignOff[]> {
  const { rows } = await client.query<LiveSignOff>(
    `${live} AND sign_off.operation_key = ANY ($2) ORDER BY sign_off.seal_number`, [jobId, operationKeys],
  )
  return rows
}
