import type { LotPlace } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'

export type WireLotPlace = z.infer<typeof LotPlace>

/** A lot as it is sealed. */
export interface SealedLot {
  readonly id: string
  readonly part: string
  readonly lot: string
}

/** Every lot or serial that was typed for a part, the first one first. */
export const lotsOfPart = `
  SELECT json_agg(json_build_object(
           'lot', part_lot.lot, 'reason', part_lot.reason, 'by', person.name, 'at', part_lot.typed_at)
           ORDER BY part_lot.ordinal) AS history
    FROM part_lot JOIN person ON person.id = part_lot.person_id
   WHERE part_lot.part_id = part.id`

/** A history as the database has it, with its instants as the wire has them. */
export function withInstants(history: WireLotPlace['history']): WireLotPlace['history'] {
  return history.map((one) => ({ ...one, at: new Date(one.at).toISOString() }))
}

/** The parts in these places with their lots, in the order of the places. */
export async function loadLotPlaces(
  database: Queryable, placed: readonly { place: string; partId: string }[], places: readonly string[],
): Promise<WireLotPlace[]> {
  const partAt = new Map(placed.map(({ place, partId }) => [place, partId]))
  const wanted = places.flatMap((place) => {
    const partId = partAt.get(place)
    return partId === undefined ? [] : [{ place, partId }]
  })
  if (wanted.length === 0) return []
  const { rows } = await database.query<Pick<WireLotPlace, 'mark' | 'lot' | 'history'> & { id: string }>(
    `SELECT part.id, part.mark, part.lot, coalesce(typed.history, '[]') AS history
       FROM part
       LEFT JOIN LATERAL (${lotsOfPart}) AS typed ON true
      WHERE part.id = ANY ($1)`,
    [wanted.map(({ partId }) => partId)],
  )
  const parts = new Map(rows.map((row) => [row.id, row]))
  return wanted.flatMap(({ place, partId }) => {
    const part = parts.get(partId)
    if (part === undefined) return []
    return [{ place, partId, mark: part.mark, lot: part.lot, history: withInstants(part.history) }]
  })
}

/** The lot that counts of each of these parts, as a signature seals it. */
export async function loadSealedLots(database: Queryable, partIds: readonly string[]): Promise<SealedLot[]> {
  const { rows } = await database.query<SealedLot>(
    `SELECT DISTINCT ON (part_lot.part_id) part_lot.id, part.mark AS part, part_lot.lot
       FROM part_lot JOIN part ON part.id = part_lot.part_id
      WHERE part_lot.part_id = ANY ($1)
      ORDER BY part_lot.part_id, part_lot.ordinal DESC`,
    [partIds],
  )
  return rows.sort((one, other) => (one.id < other.id ? -1 : 1))
}
