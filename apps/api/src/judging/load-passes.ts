import type { CountingReading, MeasuringState } from '@tenths/domain'
import type { Queryable } from '../database/queryable.ts'
import type { Evidence } from './evidence.ts'
import { stateNow } from './state-now.ts'

interface PassRow {
  readonly id: string
  readonly partId: string
  readonly feature: string
  readonly number: number
  readonly operationKey: string
  readonly standardUncertainty: number
  readonly state: MeasuringState[]
  readonly setOnPartId: string | null
  readonly setOnFeature: string | null
  readonly readings: CountingReading[]
}

/**
 * The latest pass of each feature of each part, with the readings that count: those that no correction
 * supersedes. Earlier passes were true of metal that may be gone, and are left out.
 */
export async function loadPasses(database: Queryable, jobId: string): Promise<Evidence['passes']> {
  const { rows } = await database.query<PassRow>(
    `SELECT pass.id, pass.part_id AS "partId", pass.feature, pass.number,
            pass.operation_key AS "operationKey",
            pass.standard_uncertainty AS "standardUncertainty", ${stateNow} AS state,
            pass.set_on_part_id AS "setOnPartId", pass.set_on_feature AS "setOnFeature",
            coalesce(counting.readings, '[]') AS readings
       FROM (SELECT DISTINCT ON (part_id, feature) *
               FROM pass WHERE job_id = $1 ORDER BY part_id, feature, number DESC) AS pass
       LEFT JOIN LATERAL (
              SELECT json_agg(json_build_object('id', reading.id, 'point', reading.point, 'value', reading.value)
                              ORDER BY reading.point) AS readings
                FROM reading
               WHERE reading.pass_id = pass.id
                 AND NOT EXISTS (
                       SELECT FROM reading AS correction
                        WHERE correction.supersedes = reading.id
                          AND correction.pass_id = reading.pass_id
                          AND correction.point = reading.point)
            ) AS counting ON true
      ORDER BY pass.part_id, pass.feature`,
    [jobId],
  )
  return rows.map(({ setOnPartId, setOnFeature, ...pass }) => ({
    ...pass,
    setOn: setOnPartId === null || setOnFeature === null ? null : {
      partId: setOnPartId, feature: setOnFeature,
    },
  }))
}
