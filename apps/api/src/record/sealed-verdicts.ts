import type { Verdict } from '@tenths/domain'
import type { Queryable } from '../database/queryable.ts'
import type { SealedPayload } from '../seals/seal.ts'
import type { SignOffPayload } from '../bench/sign-off-payload.ts'

type SealedRequirement = SignOffPayload['requirements'][number]

/** What the live sign-offs of a job sealed, by requirement key. */
export async function loadSealedVerdicts(
  database: Queryable, jobId: string,
): Promise<Map<string, SealedRequirement>> {
  const { rows } = await database.query<{ payload: string }>(
    `SELECT seal.payload
       FROM sign_off
       JOIN seal ON seal.job_id = sign_off.job_id AND seal.number = sign_off.seal_number
      WHERE sign_off.job_id = $1
        AND NOT EXISTS (SELECT FROM re_opening WHERE re_opening.sign_off_id = sign_off.id)
      ORDER BY sign_off.seal_number`,
    [jobId],
  )
  return new Map(rows.flatMap(({ payload }) => {
    const { content } = JSON.parse(payload) as SealedPayload<SignOffPayload>
    return content.requirements.map((requirement) => [requirement.key, requirement] as const)
  }))
}

/**
 * The verdict as it was signed: what was judged then is kept and never judged again. What a signature does
 * not seal (remedy, advice, probability) is added only while the judge still says the same.
 */
export function asSigned(verdict: Verdict, sealed: SealedRequirement | undefined): Verdict {
  if (sealed === undefined) return verdict
  const { kind, least, greatest, uncertainty, guardBand, readings } = sealed
  const isSame = kind === verdict.kind && least === verdict.least && greatest === verdict.greatest
  const said = isSame ? verdict : { ...verdict, probability: null, side: null, remedy: null, advice: null }
  return { ...said, kind, least, greatest, uncertainty, guardBand, readings, missing: [] }
}
