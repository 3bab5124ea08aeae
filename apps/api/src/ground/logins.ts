import pg from 'pg'
import { Refusal } from '../refusal.ts'

/** A login and its password. */
export type Login = { readonly name: string; readonly password: string }

/** Makes the login, or gives it this password again, so that a restored data folder fits. Needs CREATEROLE. */
export async function ensureLogin(client: pg.Client, login: Login): Promise<void> {
  const { rowCount } = await client.query('SELECT FROM pg_roles WHERE rolname = $1', [login.name])
  await client.query(loginStatement(login, rowCount === 1 ? 'ALTER' : 'CREATE'))
}

/** The statement that makes or alters the login; a login cannot be a bound parameter. */
export function loginStatement(login: Login, verb: 'ALTER' | 'CREATE'): string {
  return `${verb} ROLE ${pg.escapeIdentifier(login.name)} LOGIN PASSWORD ${pg.escapeLiteral(login.password)}`
}

/** The same address for another login. */
export function urlFor(login: Login, url: string): string {
  const address = new URL(url)
  address.username = encodeURIComponent(login.name)
  address.password = encodeURIComponent(login.password)
  return address.href
}

/**
 * Opens one connection, or refuses with a sentence that says what to do; `variable` is where the address came from.
 */
export async function connect(url: string, variable: string): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 10_000, application_name: 'tenths' })
  client.on('error', () => undefined)
  try {
    await client.connect()
  } catch (error) {
    await client.end().catch(() => undefined)
    const { host } = new URL(url)
    const { code, message } = error as { code?: string; message: string }
    throw new Refusal(
      `The database at ${host} cannot be reached (${message || code || 'no answer'}): start it, or correct ${variable}.`,
    )
  }
  return client
}
