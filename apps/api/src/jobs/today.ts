import type { Queryable } from '../database/queryable.ts'
import { dayIn } from './calendar.ts'

/** The shop's own calendar day at an instant, `YYYY-MM-DD`: what *late* is held against. */
export async function readToday(database: Queryable, now: Date): Promise<string> {
  const { rows } = await database.query<{ time_zone: string }>('SELECT time_zone FROM shop')
  const shop = rows[0]
  if (shop === undefined) throw new Error('The shop is not set up.')
  return dayIn(shop.time_zone, now)
}
