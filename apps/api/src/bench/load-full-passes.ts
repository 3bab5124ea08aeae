import type { Pass } from '@tenths/contract'
import type { z } from 'zod'
import { hasDrifted } from '@tenths/domain'
import type { Queryable } from '../database/queryable.ts'
import { besideOfPass } from '../judging/load-passes.ts'

export type WirePass = z.infer<typeof Pass>

type ReadingRow = Omit<WirePass['readings'][number], 'blades' | 'doubt'> & {
  readonly byBlades: boolean; readonly stops: number | null; readonly doubt: string | null
}

interface PassRow extends Omit<WirePass, 'setOn' | 'openedAt' | 'readings' | 'setting' | 'temperatures' | 'zero' | 'isVoid'> {
  readonly setOnPartId: string | null
  readonly setOnFeature: string | null
  readonly openedAt: Date
  readonly settingSize: number | null
  readonly settingTemperature: number | null
  readonly partTemperature: number | null
  readonly roomTemperature: number | null
  readonly zeroChecks: NonNullable<WirePass['zero']>[]
  readonly readings: ReadingRow[]
}

/**
 * Passes with all their readings, superseded ones included, oldest first: everything that was ever measured
 * of the job, or of the features that are named.
 * @param features pairs of part and feature; null for all
 */
export async function loadFullPasses(
  database: Queryable, jobId: string, features: readonly { partId: string; feature: string }[] | null,
): Promise<WirePass[]> {
  const { rows } = await database.query<PassRow>(
    `SELECT pass.id, pass.part_id AS "partId", pass.feature, pass.number,
            pass.operation_key AS "operationKey", pass.gauge_id AS "gaugeId", gauge.mark AS "gaugeMark",
            gauge.quantity,
            pass.standard_uncertainty AS "standardUncertainty",
            pass.state, pass.set_on_part_id AS "setOnPartId", pass.set_on_feature AS "setOnFeature",
            pass.setting_size AS "settingSize", pass.setting_temperature AS "settingTemperature",
            pass.part_temperature AS "partTemperature", pass.room_temperature AS "roomTemperature",
            pass.material, coalesce(checked.checks, '[]') AS "zeroChecks",
            opener.name AS by, pass.opened_at AS "openedAt", coalesce(taken.readings, '[]') AS readings,
            coalesce(neighbour.beside, '[]') AS beside
       FROM pass
       JOIN gauge ON gauge.id = pass.gauge_id
       JOIN person AS opener ON opener.id = pass.person_id
       LEFT JOIN LATERAL (
              SELECT json_agg(json_build_object(
                       'id', reading.id, 'point', reading.point, 'value', reading.value,
                       'typed', reading.typed, 'byBlades', reading.by_blades, 'stops', reading.stops,
                       'confirmed', reading.confirmed, 'doubt', reading.doubt, 'note', reading.note,
                       'supersedes', reading.supersedes, 'reason', reading.reason, 'by', person.name,
                       'takenAt', reading.taken_at) ORDER BY reading.taken_at, reading.id) AS readings
                FROM reading JOIN person ON person.id = reading.person_id
               WHERE reading.pass_id = pass.id
            ) AS taken ON true
       LEFT JOIN LATERAL (${besideOfPass}) AS neighbour ON true
       LEFT JOIN LATERAL (
              SELECT json_agg(json_build_object(
                       'deviation', zero_check.deviation, 'allowed', zero_check.allowed, 'by', person.name,
                       'checkedAt', zero_check.checked_at) ORDER BY zero_check.checked_at, zero_check.id) AS checks
                FROM zero_check_pass
                JOIN zero_check ON zero_check.id = zero_check_pass.zero_check_id
                JOIN person ON person.id = zero_check.person_id
               WHERE zero_check_pass.pass_id = pass.id
            ) AS checked ON true
      WHERE pass.job_id = $1
        AND ($2::uuid[] IS NULL
          OR (pass.part_id, pass.feature) IN (SELECT * FROM unnest($2::uuid[], $3::text[])))
      ORDER BY pass.opened_at, pass.number, pass.id`,
    [jobId, features?.map(({ partId }) => partId) ?? null, features?.map(({ feature }) => feature) ?? null],
  )
  return rows.map(toWirePass)
}

function toWirePass({
  setOnPartId, setOnFeature, settingSize, settingTemperature, partTemperature, roomTemperature, zeroChecks, openedAt,
  readings, ...pass
}: PassRow): WirePass {
  const latest = zeroChecks.at(-1)
  return {
    ...pass,
    setOn: setOnPartId === null || setOnFeature === null ? null : {
      partId: setOnPartId, feature: setOnFeature,
    },
    setting: settingSize === null ? null : { size: settingSize, temperature: settingTemperature },
    temperatures: partTemperature === null || roomTemperature === null ? null : {
      part: partTemperature, room: roomTemperature,
    },
    zero: latest === undefined ? null : { ...latest, checkedAt: new Date(latest.checkedAt).toISOString() },
    isVoid: zeroChecks.some(hasDrifted),
    openedAt: openedAt.toISOString(),
    readings: readings.map(({ byBlades, stops, doubt, ...reading }) => ({
      ...reading, ...(byBlades && { blades: { stops } }), ...(doubt !== null && { doubt }), takenAt: new Date(reading.takenAt).toISOString(),
    })),
  }
}
