import type { PoolClient } from 'pg'
import { validate as isUuid } from 'uuid'
import { ServiceError } from '../http/problem.ts'

/** A mutation as its idempotency key binds it: the same key for anything else is refused. */
export interface KeyedRequest {
  readonly key: string
  readonly principal: string
  /** Method and full path, ids included. */
  readonly route: string
  readonly bodyHash: string
  readonly status: number
}

/** @throws ServiceError `key-missing` unless the header holds a UUID. */
export function readKey(header: string | string[] | undefined): string {
  if (typeof header === 'string' && isUuid(header)) return header.toLowerCase()
  throw new ServiceError('key-missing', 'A change needs an Idempotency-Key header with a UUID, so that it happens once.')
}

/**
 * Claims the key within the transaction. A twin that came first and has not committed yet is waited for.
 * @returns whether the effect is ours to do; false when a committed answer exists.
 */
export async function claimKey(client: PoolClient, request: KeyedRequest): Promise<boolean> {
  const { rowCount } = await client.query(
    `INSERT INTO command_answer (key, principal, route, body_hash) VALUES ($1, $2, $3, $4) ON CONFLICT (key) DO NOTHING`,
    [request.key, request.principal, request.route, request.bodyHash],
  )
  return rowCount === 1
}

/** Keeps the answer of a command that succeeded, in the same transaction as its effect. */
export async function keepAnswer(client: PoolClient, request: KeyedRequest, answer: unknown): Promise<void> {
  await client.query('UPDATE command_answer SET status = $2, body = $3 WHERE key = $1', [
    request.key, request.status, JSON.stringify(answer),
  ])
}

/**
 * The answer kept for this key.
 * @throws ServiceError `key-reused` when the key belongs to another request or another person.
 */
export async function keptAnswer(client: PoolClient, request: KeyedRequest): Promise<unknown> {
  const { rows } = await client.query<{ principal: string; route: string; body_hash: string; body: string | null }>(
    'SELECT principal, route, body_hash, body FROM command_answer WHERE key = $1', [request.key],
  )
  const kept = rows[0]
  const isSame = kept !== undefined && kept.principal === request.principal
    && kept.route === request.route && kept.body_hash === request.bodyHash
  if (!isSame || kept.body === null) {
    throw new ServiceError('key-reused', 'This Idempotency-Key was used for another change. Send a new one.')
  }
  return JSON.parse(kept.body)
}
