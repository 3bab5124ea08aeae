import type { Change } from '@tenths/contract'
import type { Queryable } from '../database/queryable.ts'
import type { Position } from './position.ts'

/** An event with its place in the order of commits. */
export type PlacedChange = Change & Pick<Position, 'xid' | 'id'>

// Events are read in the order of their transactions, and only below the oldest transaction that still runs: nothing can
// come to lie before what was read. By id alone, one that commits late would be passed over for ever.
const settled = 'xid < pg_snapshot_xmin(pg_current_snapshot())'

/** Where the shop stands at this moment; null while it is not set up. */
export async function readNow(database: Queryable): Promise<Position | null> {
  const { rows } = await database.query<{ generation: string; xid: string | null; id: number | null }>(
    `SELECT shop.generation, last.xid::text AS xid, last.id
     FROM shop
     LEFT JOIN LATERAL (SELECT xid, id FROM event WHERE ${settled} ORDER BY xid DESC, id DESC LIMIT 1) AS last ON true`,
  )
  const row = rows[0]
  return row === undefined ? null : { generation: row.generation, xid: row.xid ?? '0', id: row.id ?? 0 }
}

/** Events after a position, oldest first, `most` at most; up to and including `until` when it is given. */
export async function readAfter(
  database: Queryable, after: Position, most: number, until: Position | null = null,
): Promise<PlacedChange[]> {
  const { rows } = await database.query<PlacedChange>(
    `SELECT xid::text AS xid, id, kind, job_id AS "jobId", operation_key AS "operationKey"
     FROM event
     WHERE (xid, id) > ($1::text::xid8, $2::bigint) AND ${settled}
       AND ($3::text IS NULL OR (xid, id) <= ($3::text::xid8, $4::bigint))
     ORDER BY xid, id
     LIMIT $5`,
    [after.xid, after.id, until?.xid ?? null, until?.id ?? null, most],
  )
  return rows
}
