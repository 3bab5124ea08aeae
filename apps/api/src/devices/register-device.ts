import type { registerDevice as contract } from '@tenths/contract'
import type { PoolClient } from 'pg'
import type { z } from 'zod'
import { pauseWork } from '../bench/work-time.ts'
import { ServiceError } from '../http/problem.ts'
import { hashOfSecret } from './secret.ts'

/** Minutes in which the one-time code must be typed on the tablet. */
const CODE_MINUTES = 15

/**
 * Registers a tablet of a bench; it counts once its code is typed there.
 * @throws ServiceError `not-found` for an unknown bench, `already-exists` for a name that is taken
 */
export async function registerDevice(
  client: PoolClient, { id, name, benchId, secret }: z.infer<(typeof contract)['body']>, now: Date,
): Promise<void> {
  const { rowCount } = await client.query('SELECT FROM bench WHERE id = $1', [benchId])
  if (rowCount === 0) throw new ServiceError('not-found', 'There is no such bench.', 'benchId')
  const inserted = await client.query(
    `INSERT INTO device (id, name, bench_id, code_hash, code_expires_at)
     VALUES ($1, $2, $3, $4, $5::timestamptz + make_interval(mins => $6)) ON CONFLICT DO NOTHING`,
    [id, name, benchId, hashOfSecret(secret), now, CODE_MINUTES],
  )
  if (inserted.rowCount === 0) throw new ServiceError('already-exists', `There is a device called ${name} already.`, 'name')
}

/** A new code for a registered device. @throws ServiceError `not-found` */
export async function renewDeviceCode(client: PoolClient, deviceId: string, secret: string, now: Date): Promise<void> {
  const { rowCount } = await client.query(
    `UPDATE device SET code_hash = $2, code_expires_at = $3::timestamptz + make_interval(mins => $4)
     WHERE id = $1 AND revoked_at IS NULL`,
    [deviceId, hashOfSecret(secret), now, CODE_MINUTES],
  )
  if (rowCount === 0) throw new ServiceError('not-found', 'There is no such device.')
}

/** Ends a device and every session on it. @throws ServiceError `not-found` */
export async function revokeDevice(client: PoolClient, deviceId: string, now: Date): Promise<void> {
  const { rowCount } = await client.query(
    `UPDATE device SET revoked_at = $2, code_hash = NULL, code_expires_at = NULL WHERE id = $1 AND revoked_at IS NULL`,
    [deviceId, now],
  )
  if (rowCount === 0) throw new ServiceError('not-found', 'There is no such device.')
  await endSessionsOn(client, deviceId)
}

/** Signs out whoever has the device in hand, and pauses their work. */
export async function endSessionsOn(client: PoolClient, deviceId: string): Promise<void> {
  const { rows } = await client.query<{ personId: string }>(
    'DELETE FROM session WHERE device_id = $1 RETURNING person_id AS "personId"', [deviceId],
  )
  await pauseWork(client, rows.map(({ personId }) => personId))
}
