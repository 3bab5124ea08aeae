import type { Queryable } from '../database/queryable.ts'

/** The zero check of a gauge as it is sealed with what rests on its readings. */
export interface SealedZero {
  readonly id: string
  readonly gauge: string
  readonly deviation: number
  readonly allowed: number
  readonly person: string
}

/** What a signature says of the zeros of the gauges it rests on. */
export interface SealedZeros {
  readonly checked: readonly SealedZero[]
  /** Marks of gauges that were set on a size and not put back on it after they were read. */
  readonly unchecked: readonly string[]
}

/** The zero checks of the passes that these readings belong to, and the gauges of which one is missing. */
export async function loadZerosOf(database: Queryable, readingIds: readonly string[]): Promise<SealedZeros> {
  const { rows } = await database.query<{ gauge: string } & ({ id: null } | Omit<SealedZero, 'gauge'>)>(
    `SELECT DISTINCT gauge.mark AS gauge, checked.id, checked.deviation, checked.allowed, checked.person
       FROM (SELECT DISTINCT pass_id FROM reading WHERE id = ANY ($1)) AS relied
       JOIN pass ON pass.id = relied.pass_id AND pass.setting_size IS NOT NULL
       JOIN gauge ON gauge.id = pass.gauge_id
       LEFT JOIN LATERAL (
              SELECT zero_check.id, zero_check.deviation, zero_check.allowed, zero_check.person_id AS person
                FROM zero_check_pass
                JOIN zero_check ON zero_check.id = zero_check_pass.zero_check_id
               WHERE zero_check_pass.pass_id = pass.id
                 AND zero_check.checked_at >= (SELECT max(taken_at) FROM reading WHERE reading.pass_id = pass.id)
               ORDER BY zero_check.checked_at DESC, zero_check.id
               LIMIT 1
            ) AS checked ON true
      ORDER BY gauge, id`,
    [readingIds],
  )
  return {
    checked: rows.flatMap((row) => (row.id === null ? [] : [row])),
    unchecked: [...new Set(rows.flatMap(({ id, gauge }) => (id === null ? [gauge] : [])))],
  }
}
