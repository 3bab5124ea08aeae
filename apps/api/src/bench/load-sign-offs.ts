import type { SignOff } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'

export type WireSignOff = z.infer<typeof SignOff>

interface SignOffRow {
  readonly id: string
  readonly operationKey: string
  readonly sealNumber: number
  readonly hash: string
  readonly by: string[]
  readonly signedAt: Date
  readonly givenAt: Date | null
  readonly cause: string | null
  readonly reason: string | null
  readonly reopenedAt: Date | null
}

/**
 * Every sign-off with who signed and whether it was re-opened: of one operation, or of all when
 * `operationKey` is null.
 */
export async function loadSignOffPages(
  database: Queryable, jobId: string, operationKey: string | null,
): Promise<(WireSignOff & { operationKey: string })[]> {
  const { rows } = await database.query<SignOffRow>(
    `SELECT sign_off.id, sign_off.operation_key AS "operationKey", sign_off.seal_number AS "sealNumber",
            seal.hash,
            sign_off.signed_at AS "signedAt",
            (SELECT device_at FROM pending_sign_off WHERE id = sign_off.id) AS "givenAt",
            ARRAY(SELECT person.name FROM signature JOIN person ON person.id = signature.person_id
                   WHERE signature.sign_off_id = sign_off.id ORDER BY person.name) AS by,
            re_opening.cause, re_opening.reason, re_opening.re_opened_at AS "reopenedAt"
       FROM sign_off
       JOIN seal ON seal.job_id = sign_off.job_id AND seal.number = sign_off.seal_number
       LEFT JOIN re_opening ON re_opening.sign_off_id = sign_off.id
      WHERE sign_off.job_id = $1 AND ($2::text IS NULL OR sign_off.operation_key = $2)
      ORDER BY sign_off.seal_number`,
    [jobId, operationKey],
  )
  return rows.map(({ cause, reason, reopenedAt, signedAt, givenAt, ...row }) => ({
    ...row,
    signedAt: signedAt.toISOString(),
    givenAt: givenAt?.toISOString() ?? null,
    reopened: cause === null || reason === null || reopenedAt === null
      ? null
      : { cause, reason, at: reopenedAt.toISOString() },
  }))
}
