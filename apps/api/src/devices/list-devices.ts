import type { Device } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'
import { ServiceError } from '../http/problem.ts'

export type WireDevice = z.infer<typeof Device>

interface Row extends Omit<WireDevice, 'registeredAt' | 'codeUntil' | 'heldUntil' | 'state'> {
  hasTablet: boolean
  registeredAt: Date
  codeUntil: Date | null
  heldUntil: Date | null
}

/** The devices that count, by name, each with whoever has it in hand; one statement. */
export async function listDevices(database: Queryable, now: Date, deviceId: string | null = null): Promise<WireDevice[]> {
  const { rows } = await database.query<Row>(
    `SELECT device.id, device.name, device.bench_id AS "benchId", bench.name AS "benchName",
            device.secret_hash IS NOT NULL AS "hasTablet", device.created_at AS "registeredAt",
            device.code_expires_at AS "codeUntil", held.name AS "heldBy", held.until AS "heldUntil"
     FROM device
     JOIN bench ON bench.id = device.bench_id
     LEFT JOIN LATERAL (
       SELECT person.name, session.expires_at AS until
       FROM session JOIN person ON person.id = session.person_id AND person.active
       WHERE session.device_id = device.id AND session.expires_at > now()
       ORDER BY session.created_at DESC LIMIT 1
     ) AS held ON true
     WHERE device.revoked_at IS NULL AND ($1::uuid IS NULL OR device.id = $1)
     ORDER BY device.name`,
    [deviceId],
  )
  return rows.map(({ hasTablet, registeredAt, codeUntil, heldUntil, ...device }) => ({
    ...device,
    state: hasTablet ? 'in-use' : codeUntil !== null && codeUntil > now ? 'waits' : 'lapsed',
    registeredAt: registeredAt.toISOString(),
    codeUntil: codeUntil !== null && codeUntil > now ? codeUntil.toISOString() : null,
    heldUntil: heldUntil?.toISOString() ?? null,
  }))
}

/** One device as the desk shows it. @throws ServiceError `not-found` when it is unknown or revoked */
export async function oneDevice(database: Queryable, now: Date, deviceId: string): Promise<WireDevice> {
  const [device] = await listDevices(database, now, deviceId)
  if (device === undefined) throw new ServiceError('not-found', 'There is no such device.')
  return device
}
