import type { Queryable } from '../database/queryable.ts'
import type { Evidence } from '../judging/evidence.ts'
import type { Standing } from '../judging/standing.ts'

/** A reading as it is sealed: what was typed, with which gauge and by whom. */
export interface SealedReading {
  readonly id: string
  readonly part: string
  readonly feature: string
  readonly pass: number
  readonly point: string
  readonly value: number
  readonly typed: string
  readonly gauge: string
  readonly person: string
  /** What few readings have is left out of the others: feelers, a value that was stood by, a setting, temperatures. */
  readonly stops?: number | 'untried'
  readonly confirmed?: true
  readonly note?: string
  readonly setting?: number
  readonly settingTemperature?: number
  readonly partTemperature?: number
  readonly roomTemperature?: number
  readonly material?: string
}

/** A reading as the tables hold it, for what is sealed of it. */
type ReadingRow = Pick<SealedReading, 'id' | 'part' | 'feature' | 'pass' | 'point' | 'value' | 'typed' | 'gauge' | 'person'> & {
  readonly byBlades: boolean
  readonly stops: number | null
  readonly confirmed: boolean
  readonly note: string | null
  readonly setting: number | null
  readonly settingTemperature: number | null
  readonly partTemperature: number | null
  readonly roomTemperature: number | null
  readonly material: string | null
}

/** Columns of a reading that a seal speaks of; `reading`, `pass`, `part` and `gauge` are joined. */
export const sealedColumns = `
  reading.id, part.mark AS part, pass.feature, pass.number AS pass, reading.point, reading.value, reading.typed,
  gauge.mark AS gauge, reading.person_id AS person, reading.by_blades AS "byBlades", reading.stops,
  reading.confirmed, reading.note, pass.setting_size AS setting,
  pass.setting_temperature AS "settingTemperature", pass.part_temperature AS "partTemperature",
  pass.room_temperature AS "roomTemperature", pass.material`

/** The shape that is sealed. */
export function sealedReading({
  id, part, feature, pass, point, value, typed, gauge, person, byBlades, stops, confirmed, note, ...told
}: ReadingRow): SealedReading {
  const { setting, settingTemperature, partTemperature, roomTemperature, material } = told
  return {
    id, part, feature, pass, point, value, typed, gauge, person,
    ...(byBlades && { stops: stops ?? 'untried' as const }),
    ...(confirmed && { confirmed }),
    ...(note !== null && { note }),
    ...(setting !== null && { setting }),
    ...(settingTemperature !== null && { settingTemperature }),
    ...(partTemperature !== null && { partTemperature }),
    ...(roomTemperature !== null && { roomTemperature }),
    ...(material !== null && { material }),
  }
}

/**
 * Ids of all that a signature rests on: the readings of each verdict, mates included, and of what is only
 * recorded.
 */
export function readingsReliedOn({ operation, verdicts }: Standing, { placed, passes }: Evidence): string[] {
  const partAt = new Map(placed.map(({ place, partId }) => [place, partId]))
  const recorded = operation.features.flatMap(({ place, feature }) =>
    passes.find((pass) => pass.partId === partAt.get(place) && pass.feature === feature)?.readings ?? [])
  return [
    ...new Set([...verdicts.flatMap(({ readings }) => readings), ...recorded.map(({ id }) => id)])
  ].sort()
}

/** These readings in full, in the order of their ids. */
export async function loadReliedReadings(
  database: Queryable, ids: readonly string[],
): Promise<SealedReading[]> {
  const { rows } = await database.query<ReadingRow>(
    `SELECT ${sealedColumns}
       FROM reading
       JOIN pass ON pass.id = reading.pass_id
       JOIN part ON part.id = pass.part_id
       JOIN gauge ON gauge.id = pass.gauge_id
      WHERE reading.id = ANY ($1)
      ORDER BY reading.id`,
    [ids],
  )
  return rows.map(sealedReading)
}
