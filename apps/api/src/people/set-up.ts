import { createHash, randomBytes, randomUUID } from 'node:crypto'
import type { Pool, PoolClient } from 'pg'
import { ServiceError } from '../http/problem.ts'
import { isTimeZone } from '../jobs/calendar.ts'
import { insertPerson } from './insert-person.ts'

/** Hours in which the first owner must use the link that the first start printed. */
const LINK_HOURS = 48

/** The secret has 256 random bits: one round of SHA-256 hides it. */
const hashOf = (secret: string): string => createHash('sha256').update(secret).digest('hex')

/**
 * Makes the one-time link with which the owner sets an empty shop up; null when the shop is set up already. Links made
 * before it stop counting. The secret stands behind the #, which browsers send to nobody.
 */
export async function createSetupLink(pool: Pool, now: Date): Promise<{ secret: string; path: string } | null> {
  const { rows } = await pool.query('SELECT 1 FROM shop')
  if (rows.length > 0) return null
  const secret = randomBytes(32).toString('base64url')
  await pool.query('UPDATE setup_link SET expires_at = $1 WHERE used_at IS NULL AND expires_at > $1', [now])
  await pool.query(`INSERT INTO setup_link (secret_hash, expires_at) VALUES ($1, $2::timestamptz + make_interval(hours => $3))`, [
    hashOf(secret), now, LINK_HOURS,
  ])
  return { secret, path: `/setup#${secret}` }
}

export interface FirstSettings {
  readonly secret: string
  readonly shopName: string
  readonly timeZone: string
  readonly unit: 'inch' | 'millimetre'
  readonly ownerName: string
  readonly signInName: string
  readonly password: string
  readonly pin: string
  /** The demo shop, whose passwords are printed: pages say so. */
  readonly isDemo?: boolean
}

/**
 * Sets the shop up and adds its owner; answers the owner's id. Two that come at once queue on the link's row.
 * @throws ServiceError `not-found` for an unknown or lapsed link, `setup-done` for a used one, `body-invalid`.
 */
export async function setUp(client: PoolClient, settings: FirstSettings, pepper: string, now: Date): Promise<string> {
  const { rows } = await client.query<{ expires_at: Date; used_at: Date | null }>(
    'SELECT expires_at, used_at FROM setup_link WHERE secret_hash = $1 FOR UPDATE', [hashOf(settings.secret)],
  )
  const link = rows[0]
  if (link === undefined) throw new ServiceError('not-found', 'This set-up link is not known. Start the program again for a new one.')
  if (link.used_at !== null) throw new ServiceError('setup-done', 'The shop is set up already. Sign in.')
  if (link.expires_at <= now) throw new ServiceError('not-found', 'This set-up link has lapsed. Start the program again for a new one.')
  if (!isTimeZone(settings.timeZone)) {
    throw new ServiceError('body-invalid', 'This time zone is not known; write it like Europe/Lisbon.', 'timeZone')
  }
  const inserted = await client.query(
    'INSERT INTO shop (name, time_zone, unit, is_demo) VALUES ($1, $2, $3, $4) ON CONFLICT DO NOTHING',
    [settings.shopName, settings.timeZone, settings.unit, settings.isDemo ?? false],
  )
  if (inserted.rowCount === 0) throw new ServiceError('setup-done', 'The shop is set up already. Sign in.')
  const ownerId = randomUUID()
  await insertPerson(client, {
    id: ownerId, name: settings.ownerName, signInName: settings.signInName, password: settings.password,
    pin: settings.pin, roles: ['owner', 'counter', 'machinist'],
  }, pepper)
  await client.query('UPDATE setup_link SET used_at = $2 WHERE secret_hash = $1', [hashOf(settings.secret), now])
  return ownerId
}
