import type { Role } from '@tenths/contract'
import type { PoolClient } from 'pg'
import { ServiceError } from '../http/problem.ts'
import { hashPassword } from './passwords.ts'
import { hashPin } from './pin.ts'

export interface NewPerson {
  readonly id: string
  readonly name: string
  readonly signInName: string
  readonly password: string
  readonly pin: string | null
  readonly roles: readonly Role[]
}

/** Adds a person with their roles. @throws ServiceError `already-exists` when the sign-in name is taken. */
export async function insertPerson(client: PoolClient, person: NewPerson, pepper: string): Promise<void> {
  const passwordHash = await hashPassword(person.password)
  const pinHash = person.pin === null ? null : await hashPin(person.pin, pepper)
  const { rowCount } = await client.query(
    `INSERT INTO person (id, name, sign_in_name, password_hash, pin_hash) VALUES ($1, $2, $3, $4, $5)
     ON CONFLICT DO NOTHING`,
    [person.id, person.name, person.signInName.toLowerCase(), passwordHash, pinHash],
  )
  if (rowCount === 0) {
    throw new ServiceError('already-exists', 'Somebody in the shop has this sign-in name already.', 'signInName')
  }
  await client.query('INSERT INTO person_role (person_id, role) SELECT $1, unnest($2::text[])', [
    person.id, [...new Set(person.roles)],
  ])
}
