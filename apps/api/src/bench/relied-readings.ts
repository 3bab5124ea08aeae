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
  const { rows } = await database.query<SealedReading>(
    `SELECT reading.id, part.mark AS part, pass.feature, pass.number AS pass, reading.point, reading.value,
            reading.typed,
            gauge.mark AS gauge, reading.person_id AS person
       FROM reading
       JOIN pass ON pass.id = reading.pass_id
       JOIN part ON part.id = pass.part_id
       JOIN gauge ON gauge.id = pass.gauge_id
      WHERE reading.id = ANY ($1)
      ORDER BY reading.id`,
    [ids],
  )
  return rows
}
