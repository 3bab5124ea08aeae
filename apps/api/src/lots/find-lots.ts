import type { findLots as findLotsRoute } from '@tenths/contract'
import type { Queryable } from '../database/queryable.ts'
import type { Answer } from '../http/register.ts'
import { beginningWith } from '../http/search-pattern.ts'

type Found = Answer<typeof findLotsRoute>['found'][number]

/** As many as a page shows; a recall that finds more is narrowed by typing more of the lot. */
const MOST = 200

/** Every part, in any job, of which somebody typed a lot that begins so, whatever its capitals. */
export async function findLots(database: Queryable, search: string): Promise<Answer<typeof findLotsRoute>> {
  if (search === '') return { found: [], more: false }
  const { rows } = await database.query<Omit<Found, 'at' | 'handedOverAt'> & { at: Date; handedOverAt: Date | null }>(
    `SELECT job.number AS "jobNumber", customer.name AS "customerName", engine.name AS "engineName",
            job.handed_over_at AS "handedOverAt", part.kind, part.mark, seat.place, part_lot.lot,
            part_lot.lot <> part.lot AS replaced, person.name AS by, part_lot.typed_at AS at
       FROM part_lot
       JOIN part ON part.id = part_lot.part_id
       JOIN job ON job.id = part_lot.job_id
       JOIN customer ON customer.id = job.customer_id
       JOIN engine ON engine.id = job.engine_id
       JOIN person ON person.id = part_lot.person_id
       LEFT JOIN LATERAL (
              SELECT latest.place
                FROM (SELECT place, ordinal FROM placement
                       WHERE placement.part_id = part.id ORDER BY ordinal DESC LIMIT 1) AS latest
               WHERE NOT EXISTS (SELECT FROM placement AS newer
                                  WHERE newer.job_id = job.id AND newer.place = latest.place
                                    AND newer.ordinal > latest.ordinal)
            ) AS seat ON true
      WHERE lower(part_lot.lot) LIKE $1
      ORDER BY job.number DESC, part.kind, length(part.mark), part.mark, part_lot.ordinal
      LIMIT $2`,
    [beginningWith(search.toLowerCase()), MOST + 1],
  )
  return {
    found: rows.slice(0, MOST).map(({ at, handedOverAt, ...row }) => ({
      ...row, at: at.toISOString(), handedOverAt: handedOverAt?.toISOString() ?? null,
    })),
    more: rows.length > MOST,
  }
}
