import type { Pool, PoolClient } from 'pg'

/** Runs work in one transaction: all of it stays, or nothing. How long it may wait is the pool's to say. */
export function inTransaction<T>(pool: Pool, work: (client: PoolClient) => Promise<T>): Promise<T> {
  return within(pool, 'BEGIN', work)
}

/** Reads in one transaction, all statements as of the same moment. */
export function inSnapshot<T>(pool: Pool, read: (client: PoolClient) => Promise<T>): Promise<T> {
  return within(pool, 'BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY', read)
}

async function within<T>(pool: Pool, begin: string, work: (client: PoolClient) => Promise<T>): Promise<T> {
  const client = await pool.connect()
  let isBroken = false
  try {
    await client.query(begin)
    const result = await work(client)
    await client.query('COMMIT')
    return result
  } catch (error) {
    // A connection that cannot even roll back is not given to the next one.
    await client.query('ROLLBACK').catch(() => { isBroken = true })
    throw error
  } finally {
    client.release(isBroken)
  }
}
