import pg from 'pg'
import type { Configuration } from '../configuration.ts'
import { Refusal } from '../refusal.ts'
import { connect, ensureLogin, loginStatement, urlFor } from './logins.ts'
import type { DatabaseUrls } from './own-database.ts'
import { secret } from './secrets.ts'

const OLDEST_VERSION = 15

/**
 * The two addresses of a Postgres that is not ours. Given DATABASE_URL alone, that login owns the tables and a
 * service login is made beside it; where it may not, the SQL to run is printed in the {@link Refusal}.
 */
export async function openGivenDatabase(databaseUrl: string, configuration: Configuration): Promise<DatabaseUrls> {
  const given = configuration.migrateDatabaseUrl
  const ownerUrl = given ?? databaseUrl
  const client = await connect(ownerUrl, given ? 'MIGRATE_DATABASE_URL' : 'DATABASE_URL')
  try {
    const { rows } = await client.query<Facts>(FACTS)
    const facts = rows[0]
    if (!facts || Math.floor(facts.version / 10_000) < OLDEST_VERSION) {
      throw new Refusal(`The database is older than Postgres ${OLDEST_VERSION}: set DATABASE_URL to a newer one.`)
    }
    if (given) {
      await (await connect(databaseUrl, 'DATABASE_URL')).end()
      return { ownerUrl, serviceUrl: databaseUrl }
    }
    const service = {
      name: `${facts.database.slice(0, 55)}_service`,
      password: await secret(configuration.dataFolder, 'database-service'),
    }
    const serviceUrl = urlFor(service, ownerUrl)
    if (await canConnect(serviceUrl)) return { ownerUrl, serviceUrl }
    if (!facts.mayCreateLogins) {
      throw new Refusal(
        `The login of DATABASE_URL may not create the login that serves requests: run this as one that may, and start again.\n` +
          `  ${loginStatement(service, 'CREATE')};\n` +
          `  GRANT CONNECT ON DATABASE ${pg.escapeIdentifier(facts.database)} TO ${pg.escapeIdentifier(service.name)};`,
      )
    }
    await ensureLogin(client, service)
    return { ownerUrl, serviceUrl }
  } finally {
    await client.end()
  }
}

type Facts = { version: number; database: string; mayCreateLogins: boolean }

const FACTS = `
  SELECT current_setting('server_version_num')::int AS version,
         current_database() AS database,
         rolcreaterole OR rolsuper AS "mayCreateLogins"
    FROM pg_roles
   WHERE rolname = current_user`

async function canConnect(url: string): Promise<boolean> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 10_000 })
  client.on('error', () => undefined)
  try {
    await client.connect()
    return true
  } catch {
    return false
  } finally {
    await client.end().catch(() => undefined)
  }
}
