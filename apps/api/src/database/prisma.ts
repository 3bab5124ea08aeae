import { PrismaPg } from '@prisma/adapter-pg'
import type pg from 'pg'
import { PrismaClient } from './generated/client.ts'

export type { PrismaClient } from './generated/client.ts'

/**
 * The client for plain reads and lists. It borrows connections from `pool`, so both doors to the database share one
 * login, one set of time limits and one bound on connections. `schema` must be the one that the pool's unqualified
 * names resolve to.
 */
export function createPrismaClient(pool: pg.Pool, schema: string): PrismaClient {
  return new PrismaClient({ adapter: new PrismaPg(pool, { schema, disposeExternalPool: false }) })
}

/** The schema in which this login's unqualified names are found. */
export async function currentSchema(pool: pg.Pool): Promise<string> {
  const { rows } = await pool.query<{ schema: string | null }>('SELECT current_schema() AS schema')
  const schema = rows[0]?.schema
  if (!schema) throw new Error('the search_path of this login names no schema that exists')
  return schema
}
