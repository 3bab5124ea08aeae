import type { PoolClient } from 'pg'
import { canonicalText } from './canonical.ts'
import { sealHash } from './chain.ts'

export const sealKinds = ['plan', 'sign-off', 'concession', 're-opening', 'handover'] as const
export type SealKind = (typeof sealKinds)[number]

/** What every payload says of itself, beside what it seals. */
export interface SealedPayload<Content> {
  readonly kind: SealKind
  readonly jobNumber: number
  /** Its place in the job's chain. */
  readonly number: number
  readonly sealedAt: string
  readonly content: Content
}

/**
 * Adds a link to the job's chain. The job's row must be locked by this transaction: two seals that follow the
 * same one would be a fork, which the database refuses.
 * @returns the seal's number in the chain, its hash, and when it was made
 */
export async function appendSeal(
  client: PoolClient, seal: { jobId: string; kind: SealKind; payload: object },
): Promise<{ number: number; hash: string; sealedAt: Date }> {
  const { rows: [job] } = await client.query<{
    number: number; seal_count: number; seal_head: string; now: Date
  }>(
    'SELECT number, seal_count, seal_head, now() FROM job WHERE id = $1', [seal.jobId],
  )
  if (job === undefined) throw new Error(`There is no job ${seal.jobId} to seal.`)
  const number = job.seal_count + 1
  const payload = canonicalText({
    kind: seal.kind, jobNumber: job.number, number, sealedAt: job.now.toISOString(), content: seal.payload,
  } satisfies SealedPayload<object>)
  const hash = sealHash(job.seal_head, payload)
  await client.query(
    `WITH link AS (
       INSERT INTO seal (job_id, number, kind, payload, previous, hash, sealed_at) VALUES ($1, $2, $3, $4, $5, $6, $7)
     )
     UPDATE job SET seal_count = $2, seal_head = $6 WHERE id = $1`,
    [seal.jobId, number, seal.kind, payload, job.seal_head, hash, job.now],
  )
  return { number, hash, sealedAt: job.now }
}
