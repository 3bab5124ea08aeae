import type { ShopNumbers } from '@tenths/domain'
import type { Queryable } from '../database/queryable.ts'

/** The shop's own numbers for doubting a value, and their revision; 0 and none while it goes by the starter's. */
export interface NumbersInForce {
  readonly revision: number
  readonly own: ShopNumbers
}

/** By what a value is doubted now. */
export async function numbersInForce(database: Queryable): Promise<NumbersInForce> {
  const { rows: [latest] } = await database.query<NumbersInForce>(
    'SELECT revision, numbers AS own FROM plausibility_revision ORDER BY revision DESC LIMIT 1',
  )
  return latest ?? { revision: 0, own: {} }
}
