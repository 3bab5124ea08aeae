import {
  hasDrifted, warmthOf, type BesidePart, type CountingReading, type MaterialName, type MeasuringState,
  type ZeroCheck,
} from '@tenths/domain'
import type { Queryable } from '../database/queryable.ts'
import type { Evidence } from './evidence.ts'

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
  readonly beside: BesidePart[]
  readonly settingTemperature: number | null
  readonly partTemperature: number | null
  readonly roomTemperature: number | null
  readonly material: MaterialName | null
  readonly zeroChecks: ZeroCheck[]
  readonly readings: (CountingReading & { readonly byBlades: boolean; readonly stops: number | null })[]
}

/** What the row named `pass` was taken beside. */
export const besideOfPass = `
  SELECT json_agg(json_build_object('partId', pass_beside.part_id, 'feature', nullif(pass_beside.feature, ''),
                                    'pass', pass_beside.pass_number)) AS beside
    FROM pass_beside WHERE pass_beside.pass_id = pass.id`

/**
 * The latest pass of each feature of each part, with the readings that count: those that no correction
 * supersedes. Earlier passes were true of metal that may be gone, and are left out.
 */
export async function loadPasses(database: Queryable, jobId: string): Promise<Evidence['passes']> {
  const { rows } = await database.query<PassRow>(
    `SELECT pass.id, pass.part_id AS "partId", pass.feature, pass.number,
            pass.operation_key AS "operationKey",
            pass.standard_uncertainty AS "standardUncertainty", pass.state,
            pass.set_on_part_id AS "setOnPartId", pass.set_on_feature AS "setOnFeature",
            pass.setting_temperature AS "settingTemperature", pass.part_temperature AS "partTemperature",
            pass.room_temperature AS "roomTemperature", pass.material,
            coalesce(checked.checks, '[]') AS "zeroChecks",
            coalesce(counting.readings, '[]') AS readings, coalesce(neighbour.beside, '[]') AS beside
       FROM (SELECT DISTINCT ON (part_id, feature) *
               FROM pass WHERE job_id = $1 ORDER BY part_id, feature, number DESC) AS pass
       LEFT JOIN LATERAL (
              SELECT json_agg(json_build_object('id', reading.id, 'point', reading.point, 'value', reading.value,
                                                'byBlades', reading.by_blades, 'stops', reading.stops)
                              ORDER BY reading.point) AS readings
                FROM reading
               WHERE reading.pass_id = pass.id
                 AND NOT EXISTS (
                       SELECT FROM reading AS correction
                        WHERE correction.supersedes = reading.id
                          AND correction.pass_id = reading.pass_id
                          AND correction.point = reading.point)
            ) AS counting ON true
       LEFT JOIN LATERAL (${besideOfPass}) AS neighbour ON true
       LEFT JOIN LATERAL (
              SELECT json_agg(json_build_object('deviation', zero_check.deviation, 'allowed', zero_check.allowed)) AS checks
                FROM zero_check_pass
                JOIN zero_check ON zero_check.id = zero_check_pass.zero_check_id
               WHERE zero_check_pass.pass_id = pass.id
            ) AS checked ON true
      ORDER BY pass.part_id, pass.feature`,
    [jobId],
  )
  return rows.map(({
    setOnPartId, setOnFeature, settingTemperature, partTemperature, roomTemperature, material, zeroChecks, readings, ...pass
  }) => ({
    ...pass,
    setOn: setOnPartId === null || setOnFeature === null ? null : {
      partId: setOnPartId, feature: setOnFeature,
    },
    warmth: warmthOf({
      temperatures: partTemperature === null || roomTemperature === null ? null : {
        part: partTemperature, room: roomTemperature,
      },
      setting: { temperature: settingTemperature },
      material,
    }),
    isVoid: zeroChecks.some(hasDrifted),
    readings: readings.map(({ byBlades, stops, ...reading }) => (byBlades ? { ...reading, blades: { stops } } : reading)),
  }))
}
