import type { PoolClient } from 'pg'
import { ServiceError } from '../http/problem.ts'
import type { BenchDevice } from './device-cookie.ts'
import { endSessionsOn } from './register-device.ts'
import { hashOfSecret, newSecret } from './secret.ts'

/**
 * Makes the browser that knows a one-time code the device it was drawn for. The code is spent; a secret that another
 * tablet had for this device counts no longer.
 * @returns the device and its new secret, which goes into the cookie and nowhere else
 * @throws ServiceError `not-found` for a code that is unknown, spent or lapsed
 */
export async function enrolDevice(client: PoolClient, code: string, now: Date): Promise<{ device: BenchDevice; secret: string }> {
  const secret = newSecret()
  const { rows: [device] } = await client.query<BenchDevice>(
    `UPDATE device SET secret_hash = $3, code_hash = NULL, code_expires_at = NULL
     WHERE code_hash = $1 AND code_expires_at > $2 AND revoked_at IS NULL
     RETURNING id, name, bench_id AS "benchId"`,
    [hashOfSecret(code), now, hashOfSecret(secret)],
  )
  if (device === undefined) {
    throw new ServiceError('not-found', 'This code is not known, or it has lapsed. The owner’s desk gives a new one.', 'secret')
  }
  await endSessionsOn(client, device.id)
  return { device, secret }
}
