import type { Part } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'

type WirePart = z.infer<typeof Part>

interface Row {
  id: string
  kind: string
  mark: string
  description: string
  lot: string
  ownedBy: 'customer' | 'shop'
  history: { place: string | null; from: string }[]
}

/**
 * The parts of a job, each with every place it ever sat in and since when. A part that another one took the place of
 * sits nowhere. One statement.
 */
export async function readJobParts(database: Queryable, jobId: string): Promise<WirePart[]> {
  const { rows } = await database.query<Row & { place: string | null }>(
    `WITH now_in AS (
       SELECT DISTINCT ON (place) place, part_id, ordinal FROM placement
       WHERE job_id = $1 AND place IS NOT NULL ORDER BY place, ordinal DESC
     ), latest AS (
       SELECT DISTINCT ON (part_id) part_id, place, ordinal FROM placement WHERE job_id = $1 ORDER BY part_id, ordinal DESC
     )
     SELECT part.id, part.kind, part.mark, part.description, part.lot, part.owned_by AS "ownedBy",
            now_in.place, coalesce(history.places, '[]') AS history
     FROM part
     LEFT JOIN latest ON latest.part_id = part.id
     LEFT JOIN now_in ON now_in.part_id = part.id AND now_in.ordinal = latest.ordinal
     LEFT JOIN LATERAL (
       SELECT json_agg(json_build_object('place', place, 'from', placed_at) ORDER BY ordinal) AS places
       FROM placement WHERE placement.part_id = part.id
     ) AS history ON true
     WHERE part.job_id = $1
     ORDER BY part.kind, length(part.mark), part.mark`,
    [jobId],
  )
  return rows.map(({ history, ...part }) => ({
    ...part, history: history.map(({ place, from }) => ({ place, from: new Date(from).toISOString() })),
  }))
}
