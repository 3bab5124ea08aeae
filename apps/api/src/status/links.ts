import { createHash, createHmac, randomBytes, randomUUID } from 'node:crypto'
import type { PoolClient } from 'pg'
import type { Queryable } from '../database/queryable.ts'
import { ServiceError } from '../http/problem.ts'

/** Days after which a status link lapses by itself. */
const LINK_DAYS = 400

/** The token of a link: an HMAC of its 128 random bits under a key of the data folder. */
function tokenOf(secret: Buffer, key: string): string {
  return createHmac('sha256', Buffer.from(key, 'hex')).update(secret).digest('base64url')
}

/** What a link is looked up by: the token itself is kept nowhere. */
export function hashOfToken(token: string): string {
  return createHash('sha256').update(token).digest('hex')
}

/** Path of a link's page. It can be printed again at any time, by whoever has the key. */
function statusPath(secret: Buffer, key: string): string {
  return `/s/${tokenOf(secret, key)}`
}

/** Makes a status link for a job and answers its path. */
export async function createStatusLink(
  client: PoolClient, { jobId, personId, key }: { jobId: string; personId: string; key: string },
): Promise<{ id: string; path: string }> {
  const id = randomUUID()
  const secret = randomBytes(16)
  await client.query(
    `INSERT INTO status_link (id, job_id, secret, token_hash, made_by, expires_at)
     VALUES ($1, $2, $3, $4, $5, now() + make_interval(days => $6))`,
    [id, jobId, secret, hashOfToken(tokenOf(secret, key)), personId, LINK_DAYS],
  )
  return { id, path: statusPath(secret, key) }
}

export interface JobLink {
  readonly id: string
  readonly path: string
  readonly madeAt: string
  readonly revokedAt: string | null
}

/** The links of a job, the first made first. */
export async function readLinks(database: Queryable, jobId: string, key: string): Promise<JobLink[]> {
  const { rows } = await database.query<{ id: string; secret: Buffer; made_at: Date; revoked_at: Date | null }>(
    'SELECT id, secret, made_at, revoked_at FROM status_link WHERE job_id = $1 ORDER BY made_at, id', [jobId],
  )
  return rows.map(({ id, secret, made_at, revoked_at }) => ({
    id, path: statusPath(secret, key), madeAt: made_at.toISOString(), revokedAt: revoked_at?.toISOString() ?? null,
  }))
}

/** The path of one link. @throws ServiceError `not-found` */
export async function readPath(database: Queryable, linkId: string, key: string): Promise<string> {
  const { rows } = await database.query<{ secret: Buffer }>('SELECT secret FROM status_link WHERE id = $1', [linkId])
  const link = rows[0]
  if (link === undefined) throw new ServiceError('not-found', 'There is no such link.')
  return statusPath(link.secret, key)
}

/** Revokes a link from this moment; one that is revoked stays so. Answers its job. @throws ServiceError `not-found` */
export async function revokeStatusLink(client: PoolClient, linkId: string): Promise<string> {
  const { rows } = await client.query<{ job_id: string }>(
    'UPDATE status_link SET revoked_at = coalesce(revoked_at, now()) WHERE id = $1 RETURNING job_id', [linkId],
  )
  const link = rows[0]
  if (link === undefined) throw new ServiceError('not-found', 'There is no such link.')
  return link.job_id
}
