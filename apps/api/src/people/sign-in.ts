import type { Pool } from 'pg'
import { ServiceError } from '../http/problem.ts'
import { isPassword } from './passwords.ts'

/**
 * The id of the active person with this sign-in name and password. An unknown name and a wrong password are refused
 * with the same words, after the same work.
 * @throws ServiceError `sign-in-refused`
 */
export async function checkSignIn(pool: Pool, signInName: string, password: string): Promise<string> {
  const { rows } = await pool.query<{ id: string; password_hash: string }>(
    'SELECT id, password_hash FROM person WHERE sign_in_name = $1 AND active', [signInName.toLowerCase()],
  )
  const person = rows[0]
  const matches = await isPassword(password, person?.password_hash)
  if (!matches || person === undefined) {
    throw new ServiceError('sign-in-refused', 'Name or password is not right.', 'password')
  }
  return person.id
}
