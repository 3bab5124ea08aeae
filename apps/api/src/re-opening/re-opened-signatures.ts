import type { ReOpenedSignature } from '@tenths/contract'
import type { PoolClient } from 'pg'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'

type WireReOpening = z.infer<typeof ReOpenedSignature>

/** More than a person reads; the oldest come first, so that none is passed over. */
const MOST = 50

/** Signatures of a person that somebody else opened again and that they have not been told of; one statement. */
export async function readReOpened(database: Queryable, personId: string): Promise<WireReOpening[]> {
  const { rows } = await database.query<Omit<WireReOpening, 'at'> & { at: Date }>(
    `SELECT sign_off.id AS "signOffId", job.number AS "jobNumber", sign_off.operation_key AS "operationKey",
            coalesce(operation_state.title, sign_off.operation_key) AS title, re_opening.reason, cause.name AS by,
            re_opening.re_opened_at AS at
       FROM signature
       JOIN sign_off ON sign_off.id = signature.sign_off_id
       JOIN re_opening ON re_opening.sign_off_id = sign_off.id AND re_opening.person_id <> signature.person_id
       JOIN person AS cause ON cause.id = re_opening.person_id
       JOIN job ON job.id = sign_off.job_id
       LEFT JOIN operation_state
         ON operation_state.job_id = sign_off.job_id AND operation_state.operation_key = sign_off.operation_key
      WHERE signature.person_id = $1
        AND NOT EXISTS (SELECT FROM re_opening_seen AS seen
                         WHERE seen.sign_off_id = sign_off.id AND seen.person_id = signature.person_id)
      ORDER BY re_opening.re_opened_at, sign_off.id
      LIMIT $2`,
    [personId, MOST],
  )
  return rows.map(({ at, ...row }) => ({ ...row, at: at.toISOString() }))
}

/** Keeps that a person was told. What is not a re-opened signature of theirs is passed over. */
export async function seeReOpened(client: PoolClient, personId: string, signOffIds: readonly string[]): Promise<void> {
  await client.query(
    `INSERT INTO re_opening_seen (sign_off_id, person_id)
     SELECT signature.sign_off_id, signature.person_id
       FROM signature JOIN re_opening ON re_opening.sign_off_id = signature.sign_off_id
      WHERE signature.person_id = $1 AND signature.sign_off_id = ANY ($2)
         ON CONFLICT DO NOTHING`,
    [personId, signOffIds],
  )
}
