import type { PoolClient } from 'pg'
import { ServiceError } from '../http/problem.ts'
import { isPassword } from './passwords.ts'
import { hashPin } from './pin.ts'

/**
 * Gives a person a new PIN, their password being the proof; counts of wrong tries with the old one are cleared.
 * @throws ServiceError `sign-in-refused` when the password is wrong.
 */
export async function changePin(
  client: PoolClient, personId: string, { password, pin }: { password: string; pin: string }, pepper: string,
): Promise<void> {
  const { rows } = await client.query<{ password_hash: string }>('SELECT password_hash FROM person WHERE id = $1', [personId])
  if (!(await isPassword(password, rows[0]?.password_hash))) {
    throw new ServiceError('sign-in-refused', 'The password is not right.', 'password')
  }
  await client.query('UPDATE person SET pin_hash = $2 WHERE id = $1', [personId, await hashPin(pin, pepper)])
  await client.query('DELETE FROM pin_lock WHERE person_id = $1', [personId])
}
