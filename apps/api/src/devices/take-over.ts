import type { Pool } from 'pg'
import type { Queryable } from '../database/queryable.ts'
import { ServiceError } from '../http/problem.ts'
import { verifyPin, type PinTry } from '../people/pin.ts'

/** Whose hands a bench device may be in. */
const atTheBench = `person.active AND EXISTS (SELECT FROM person_role
  WHERE person_role.person_id = person.id AND person_role.role IN ('machinist', 'owner'))`

/** Who may take a device over: machinists and owners with a PIN, by name. */
export async function peopleWithPin(database: Queryable): Promise<{ id: string; name: string }[]> {
  const { rows } = await database.query<{ id: string; name: string }>(
    `SELECT id, name FROM person WHERE ${atTheBench} AND pin_hash IS NOT NULL ORDER BY name`,
  )
  return rows
}

/**
 * Checks who takes the device over, and their PIN; wrong ones count for this person on this device alone.
 * @throws ServiceError `not-allowed` for who does not work at a bench, and as verifyPin
 */
export async function checkTakeOver(pool: Pool, pinTry: PinTry & { device: string }): Promise<void> {
  const { rowCount } = await pool.query(`SELECT FROM person WHERE id = $1 AND ${atTheBench}`, [pinTry.personId])
  if (rowCount === 0) throw new ServiceError('not-allowed', 'Only machinists and the owner take over a bench device.', 'personId')
  await verifyPin(pool, pinTry)
}
