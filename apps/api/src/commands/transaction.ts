import type { Pool, PoolClient } from 'pg'

/** Runs work in one transaction: all of it stays, or nothing. How long it may wait is the pool's to say. */
export async function inTransaction<T>(pool: Pool, work: (client: PoolClient) => Promise<T>): Promise<T> {
  const client = await pool.connect()
  let isBroken = false
  try {
    await client.query('BEGIN')
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
