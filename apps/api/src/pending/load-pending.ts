import type { PendingSignOff } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'

export type WirePending = z.infer<typeof PendingSignOff>

/** Which pending sign-offs: those that concern one person, or those of one job. */
export type Which = { readonly signer: string } | { readonly jobId: string }

/**
 * Pending sign-offs of steps that are still open, in the order in which they arrived: those that are to be confirmed, and
 * those that are to be signed again. Sealed ones and those put away are left out, and what somebody else signed meanwhile.
 */
export async function loadPending(database: Queryable, which: Which): Promise<WirePending[]> {
  const [condition, values] = conditionOf(which)
  const { rows } = await database.query<Omit<WirePending, 'signedAt' | 'state'> & { signedAt: Date }>(
    `SELECT pending.id, pending.job_id AS "jobId", job.number AS "jobNumber",
            pending.operation_key AS "operationKey",
            coalesce(step.title, pending.operation_key) AS title,
            pending.device_at AS "signedAt", again.reason,
            (SELECT json_agg(json_build_object(
                      'id', person.id, 'name', person.name, 'confirmed', confirmation.person_id IS NOT NULL
                    ) ORDER BY array_position(pending.signers, person.id))
               FROM person
               LEFT JOIN pending_confirmation AS confirmation
                 ON confirmation.pending_sign_off_id = pending.id AND confirmation.person_id = person.id
              WHERE person.id = ANY (pending.signers)) AS signers
       FROM pending_sign_off AS pending
       JOIN job ON job.id = pending.job_id
       LEFT JOIN operation_state AS step
         ON step.job_id = pending.job_id AND step.operation_key = pending.operation_key
       LEFT JOIN pending_end AS again ON again.pending_sign_off_id = pending.id AND again.kind = 'sign-again'
      WHERE ${condition}
        AND NOT EXISTS (SELECT FROM sign_off WHERE sign_off.id = pending.id)
        AND NOT EXISTS (SELECT FROM pending_end AS away
                         WHERE away.pending_sign_off_id = pending.id AND away.kind = 'put-away')
        AND step.state IS DISTINCT FROM 'signed'
      ORDER BY pending.received_at, pending.id`,
    values,
  )
  return rows.map(({ signedAt, ...row }) => ({
    ...row, signedAt: signedAt.toISOString(), state: row.reason === null ? 'to-confirm' : 'sign-again',
  }))
}

function conditionOf(which: Which): [string, unknown[]] {
  if ('signer' in which) return ['pending.signers @> ARRAY[$1::uuid]', [which.signer]]
  return ['pending.job_id = $1', [which.jobId]]
}
