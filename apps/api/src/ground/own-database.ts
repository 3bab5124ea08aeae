import pg from 'pg'
import { connect, ensureLogin, urlFor } from './logins.ts'
import { secret } from './secrets.ts'

/** Names inside the program's own cluster. */
const OWNER = 'tenths_owner'
export const SERVICE = 'tenths_service'
const DATABASE = 'tenths'

/** Addresses of one database for the login that owns its tables and the one that serves requests. */
export type DatabaseUrls = { readonly ownerUrl: string; readonly serviceUrl: string }

/** Makes both logins and an empty database in a cluster of our own, as far as they are missing. */
export async function ensureOwnDatabase(
  superuserUrl: (database: string) => string,
  dataFolder: string,
  database = DATABASE,
): Promise<DatabaseUrls> {
  const owner = { name: OWNER, password: await secret(dataFolder, 'database-owner') }
  const service = { name: SERVICE, password: await secret(dataFolder, 'database-service') }
  const client = await connect(superuserUrl('postgres'), 'DATABASE_URL')
  try {
    await ensureLogin(client, owner)
    await ensureLogin(client, service)
    const { rowCount } = await client.query('SELECT FROM pg_database WHERE datname = $1', [database])
    if (rowCount === 0) {
      await client.query(`CREATE DATABASE ${pg.escapeIdentifier(database)} OWNER ${OWNER} TEMPLATE template0`)
    }
  } finally {
    await client.end()
  }
  const url = superuserUrl(database)
  return { ownerUrl: urlFor(owner, url), serviceUrl: urlFor(service, url) }
}
