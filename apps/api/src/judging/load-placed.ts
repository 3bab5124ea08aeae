import type { Queryable } from '../database/queryable.ts'
import type { PlacedLot } from './evidence.ts'

/**
 * Which part sits where now: its latest placement counts, and the latest of the place. A part that another
 * one pushed out sits nowhere until it is placed again.
 */
const placedNow = `
  SELECT latest.place, latest.part_id
    FROM (SELECT DISTINCT ON (part_id) part_id, place, ordinal
            FROM placement WHERE job_id = $1 ORDER BY part_id, ordinal DESC) AS latest
   WHERE latest.place IS NOT NULL
     AND NOT EXISTS (
           SELECT FROM placement AS newer
            WHERE newer.job_id = $1 AND newer.place = latest.place AND newer.ordinal > latest.ordinal)`

/** The job's parts in their places, sorted by place. */
export async function loadPlaced(database: Queryable, jobId: string): Promise<PlacedLot[]> {
  const { rows } = await database.query<PlacedLot>(
    `SELECT placed.place, placed.part_id AS "partId", part.lot
       FROM (${placedNow}) AS placed JOIN part ON part.id = placed.part_id
      ORDER BY placed.place`,
    [jobId],
  )
  return rows
}
