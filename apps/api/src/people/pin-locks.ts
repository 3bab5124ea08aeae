import type { PinLock } from '@tenths/contract'
import type { PoolClient } from 'pg'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'
import { ServiceError } from '../http/problem.ts'
import { LOCK_MINUTES } from './pin.ts'

type WireLock = z.infer<typeof PinLock>

/** Whose PIN is refused unread at this moment, the latest first; one statement. */
export async function listPinLocks(database: Queryable, now: Date): Promise<WireLock[]> {
  const { rows } = await database.query<Omit<WireLock, 'since' | 'until'> & { until: Date }>(
    `SELECT pin_lock.person_id AS "personId", person.name AS "personName", pin_lock.device, device.name AS "deviceName",
            pin_lock.locked_until AS until
     FROM pin_lock
     JOIN person ON person.id = pin_lock.person_id
     LEFT JOIN device ON device.id::text = pin_lock.device
     WHERE pin_lock.locked_until > $1
     ORDER BY pin_lock.locked_until DESC, person.name`,
    [now],
  )
  return rows.map(({ until, ...lock }) => ({
    ...lock, since: new Date(until.getTime() - LOCK_MINUTES * 60_000).toISOString(), until: until.toISOString(),
  }))
}

/** Clears a count of wrong PINs, so that the person may try again at once. @throws ServiceError `not-found` */
export async function unlockPin(client: PoolClient, personId: string, device: string): Promise<void> {
  const { rowCount } = await client.query('DELETE FROM pin_lock WHERE person_id = $1 AND device = $2', [personId, device])
  if (rowCount === 0) throw new ServiceError('not-found', 'This lock is gone already.')
}
