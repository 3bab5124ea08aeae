import type { Pass } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'
import { stateNow } from '../judging/state-now.ts'

export type WirePass = z.infer<typeof Pass>

interface PassRow extends Omit<WirePass, 'setOn' | 'openedAt' | 'readings'> {
  readonly setOnPartId: string | null
  readonly setOnFeature: string | null
  readonly openedAt: Date
  readonly readings: { takenAt: string }[]
}

/**
 * Passes with all their readings, superseded ones included, oldest first: everything that was ever measured
 * of the job, or of the features that are named.
 * @param features pairs of part and feature; null for all
 * @param states those that the readings were taken in, or those that they still hold for
 */
export async function loadFullPasses(
  database: Queryable, jobId: string, features: readonly { partId: string; feature: string }[] | null,
  states: 'as-taken' | 'now',
): Promise<WirePass[]> {
  const { rows } = await database.query<PassRow>(
    `SELECT pass.id, pass.part_id AS "partId", pass.feature, pass.number,
            pass.operation_key AS "operationKey", pass.gauge_id AS "gaugeId", gauge.mark AS "gaugeMark",
            gauge.quantity,
            pass.standard_uncertainty AS "standardUncertainty",
            ${states === 'as-taken' ? 'pass.state' : stateNow} AS state, pass.set_on_part_id AS "setOnPartId", pass.set_on_feature AS "setOnFeature",
            opener.name AS by, pass.opened_at AS "openedAt", coalesce(taken.readings, '[]') AS readings
       FROM pass
       JOIN gauge ON gauge.id = pass.gauge_id
       JOIN person AS opener ON opener.id = pass.person_id
       LEFT JOIN LATERAL (
              SELECT json_agg(json_build_object(
                       'id', reading.id, 'point', reading.point, 'value', reading.value,
                       'typed', reading.typed,
                       'supersedes', reading.supersedes, 'reason', reading.reason, 'by', person.name,
                       'takenAt', reading.taken_at) ORDER BY reading.taken_at, reading.id) AS readings
                FROM reading JOIN person ON person.id = reading.person_id
               WHERE reading.pass_id = pass.id
            ) AS taken ON true
      WHERE pass.job_id = $1
        AND ($2::uuid[] IS NULL
          OR (pass.part_id, pass.feature) IN (SELECT * FROM unnest($2::uuid[], $3::text[])))
      ORDER BY pass.opened_at, pass.number, pass.id`,
    [jobId, features?.map(({ partId }) => partId) ?? null, features?.map(({ feature }) => feature) ?? null],
  )
  return rows.map(({ setOnPartId, setOnFeature, openedAt, readings, ...pass }) => ({
    ...pass,
    setOn: setOnPartId === null || setOnFeature === null ? null : {
      partId: setOnPartId, feature: setOnFeature,
    },
    openedAt: openedAt.toISOString(),
    readings: readings.map(
      (reading) => ({ ...reading, takenAt: new Date(reading.takenAt).toISOString() }),
    ) as WirePass['readings'],
  }))
}
