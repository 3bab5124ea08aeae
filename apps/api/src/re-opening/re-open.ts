import type { PoolClient } from 'pg'
import { appendSeal } from '../seals/seal.ts'

export type ReOpeningCause = 'correction' | 'new-pass' | 'moved-part' | 'plan' | 'observation' | 'owner' | 'zero-drift'

/** A live sign-off and the operation it signed. */
export interface LiveSignOff {
  readonly id: string
  readonly operationKey: string
  readonly title: string
}

export interface ReOpening {
  readonly jobId: string
  readonly personId: string
  readonly cause: ReOpeningCause
  readonly reason: string
}

/**
 * Says of each sign-off that it no longer counts, and why, with a seal each: the sign-off itself stays as it
 * was sealed.
 * @returns the operations that are open again, for the answer to whoever changed what they relied on
 */
export async function reOpen(
  client: PoolClient, signOffs: readonly LiveSignOff[], { jobId, personId, cause, reason }: ReOpening,
): Promise<{ key: string; title: string }[]> {
  for (const signOff of signOffs) {
    const seal = await appendSeal(client, {
      jobId,
      kind: 're-opening',
      payload: {
        signOff: signOff.id, operation: signOff.operationKey, title: signOff.title, cause, reason,
        person: personId,
      },
    })
    await client.query(
      `INSERT INTO re_opening (sign_off_id, job_id, seal_number, cause, reason, person_id, re_opened_at)
       VALUES ($1, $2, $3, $4, $5, $6, $7)`,
      [signOff.id, jobId, seal.number, cause, reason, personId, seal.sealedAt],
    )
  }
  return signOffs.map(({ operationKey, title }) => ({ key: operationKey, title }))
}
