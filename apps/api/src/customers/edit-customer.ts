import type { PoolClient } from 'pg'
import { requireVersion } from '../commands/if-match.ts'
import { ServiceError } from '../http/problem.ts'

export interface CustomerFields {
  readonly name: string
  readonly phone: string
  readonly email: string
}

export type CustomerRow = CustomerFields & { readonly id: string; readonly version: number }

/** Adds a customer. @throws ServiceError `already-exists` when the id is taken. */
export async function addCustomer(client: PoolClient, id: string, { name, phone, email }: CustomerFields): Promise<CustomerRow> {
  const { rows } = await client.query<CustomerRow>(
    `INSERT INTO customer (id, name, phone, email) VALUES ($1, $2, $3, $4) ON CONFLICT (id) DO NOTHING
     RETURNING id, name, phone, email, version`,
    [id, name, phone, email],
  )
  const [added] = rows
  if (added === undefined) throw new ServiceError('already-exists', 'This customer is in the book already.', 'id')
  return added
}

/** Corrects a customer. @throws ServiceError `not-found`, `version-missing`, `edit-stale`. */
export async function changeCustomer(
  client: PoolClient, id: string, { name, phone, email }: CustomerFields, ifMatch: number | null,
): Promise<CustomerRow> {
  const { rows: [current] } = await client.query<{ version: number }>(
    'SELECT version FROM customer WHERE id = $1 FOR NO KEY UPDATE', [id],
  )
  if (current === undefined) throw new ServiceError('not-found', 'There is no such customer.')
  requireVersion(ifMatch, current.version)
  const { rows: [changed] } = await client.query<CustomerRow>(
    `UPDATE customer SET name = $2, phone = $3, email = $4, version = version + 1 WHERE id = $1
     RETURNING id, name, phone, email, version`,
    [id, name, phone, email],
  )
  if (changed === undefined) throw new Error('A locked row cannot vanish.')
  return changed
}
