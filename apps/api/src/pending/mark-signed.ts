import type { markSigned as markSignedRoute } from '@tenths/contract'
import { operationOf } from '../bench/reach.ts'
import { requireSamePerson } from '../bench/same-person.ts'
import { endWorkAsOf } from '../bench/work-time.ts'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'
import type { Answer } from '../http/register.ts'
import { loadPlan } from '../judging/load-evidence.ts'

type Route = typeof markSignedRoute

/**
 * Keeps that a step was marked as signed without a network. Whether it may be signed is asked when its people
 * confirm it; until then it is a sentence in a list and nothing depends on it.
 */
export async function markSigned(
  { client, person, deviceId, announce }: CommandContext, { params, body }: CommandInput<Route>,
): Promise<Answer<Route>> {
  const jobId = params.id
  announce({ kind: 'mark-signed', jobId, operationKey: body.operationKey })
  requireSamePerson(person.id, body.signedBy, 'signedBy')
  const { number } = await lockJob(client, jobId)
  const { title } = operationOf((await loadPlan(client, jobId)).plan, body.operationKey)
  const signers = await namesOf(client, body.signers)
  if (!body.signers.includes(person.id) || signers.length < body.signers.length) {
    throw new ServiceError('body-invalid', 'Those who sign are the person who is signed in and people of the shop.', 'signers')
  }
  if (new Set(body.signers).size < body.signers.length) {
    throw new ServiceError('same-person-twice', 'Two different people sign: one checks the other.', 'signers.1')
  }
  await client.query(
    `INSERT INTO pending_sign_off
       (id, job_id, operation_key, definition_hash, readings, person_id, signers, device_id, device_at, device_offset)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10)
     ON CONFLICT (id) DO NOTHING`,
    [
      body.id, jobId, body.operationKey, body.definitionHash, body.readings, person.id, body.signers, deviceId,
      body.deviceAt, body.deviceOffset,
    ],
  )
  await endWorkAsOf(client, jobId, body.operationKey, body)
  return {
    id: body.id, jobId, jobNumber: number, operationKey: body.operationKey, title,
    signedAt: new Date(body.deviceAt).toISOString(),
    signers: signers.map((signer) => ({ ...signer, confirmed: false })),
    state: 'to-confirm', reason: null,
  }
}

async function namesOf(
  client: CommandContext['client'], ids: readonly string[],
): Promise<{ id: string; name: string }[]> {
  const { rows } = await client.query<{ id: string; name: string }>(
    'SELECT person.id, person.name FROM unnest($1::uuid[]) WITH ORDINALITY AS signer (id, turn) JOIN person USING (id) WHERE active ORDER BY turn',
    [ids],
  )
  return rows
}
