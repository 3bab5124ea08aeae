import type { signOff as signOffRoute } from '@tenths/contract'
import type { PoolClient } from 'pg'
import type { Caller, CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'
import type { Answer } from '../http/register.ts'
import { loadEvidence } from '../judging/load-evidence.ts'
import { obstaclesOf } from '../judging/obstacles.ts'
import { projectOperations } from '../judging/project-operations.ts'
import { standingsOf, type Standing } from '../judging/standing.ts'
import { loadSealedLots } from '../lots/load-lots.ts'
import { loadSealedPhotographs } from '../photographs/load-photographs.ts'
import { verifyPin } from '../people/pin.ts'
import { definitionHash } from '../plans/definition-hash.ts'
import { appendSeal } from '../seals/seal.ts'
import { loadSignOffPages } from './load-sign-offs.ts'
import { operationOf, refuseUnreached } from './reach.ts'
import { loadReliedReadings, readingsReliedOn } from './relied-readings.ts'
import { signOffPayload, type Signer } from './sign-off-payload.ts'

type Route = typeof signOffRoute

/**
 * Checks the PINs, before anything is begun: a wrong one is counted although nothing is signed.
 * @throws ServiceError `same-person-twice`, or as verifyPin
 */
export async function checkSignatures(
  { shop, deviceId, now }: Caller, { body }: CommandInput<Route>,
): Promise<void> {
  const [first, second] = body.signatures
  if (first?.personId === second?.personId) {
    throw new ServiceError(
      'same-person-twice', 'Two different people sign: one checks the other.', 'signatures.1.personId',
    )
  }
  for (const [index, { personId, pin }] of body.signatures.entries()) {
    await verifyPin(shop.pool, {
      personId, pin, device: deviceId, pepper: shop.secrets.pinPepper, now, field: `signatures.${index}.pin`,
    })
  }
}

/** Signs an operation as the bench saw it, and seals what was measured, seen and judged. */
export async function signOff(
  { client, announce }: CommandContext, { params, body }: CommandInput<Route>,
): Promise<Answer<Route>> {
  const jobId = params.id
  announce({ kind: 'sign-off', jobId, operationKey: body.operationKey })
  const job = await lockJob(client, jobId)
  const before = (await loadSignOffPages(client, jobId, body.operationKey)).find(({ id }) => id === body.id)
  if (before !== undefined) return before

  const evidence = await loadEvidence(client, jobId)
  const operation = operationOf(evidence.plan, body.operationKey)
  const hash = definitionHash(evidence.plan, operation.key)
  if (hash !== body.definitionHash) {
    throw new ServiceError(
      'operation-changed', `“${operation.title}” was planned otherwise meanwhile: look at it again, then sign.`, 'definitionHash',
    )
  }
  const standing = standingsOf(evidence).find((one) => one.operation.key === operation.key)
  if (standing === undefined) throw new Error(`Operation ${operation.key} of the plan stands nowhere.`)
  requireReady(standing, evidence.plan.requirements)
  if (body.signatures.length < operation.signatures) {
    throw new ServiceError(
      'second-person-needed', `“${operation.title}” takes two people’s signatures.`, 'signatures',
    )
  }

  const readings = await loadReliedReadings(client, readingsReliedOn(standing, evidence))
  const signers = await loadSigners(client, body.signatures.map(({ personId }) => personId))
  const partAt = new Map(evidence.placed.map(({ place, partId }) => [place, partId]))
  const records = {
    lots: await loadSealedLots(client, (operation.lots ?? []).flatMap((place) => partAt.get(place) ?? [])),
    photographs: await loadSealedPhotographs(client, jobId, operation.key),
  }
  const seal = await appendSeal(client, {
    jobId,
    kind: 'sign-off',
    payload: signOffPayload({ id: body.id, hash, evidence, standing, readings, signers, ...records }),
  })
  await client.query(
    `INSERT INTO sign_off (id, job_id, seal_number, operation_key, definition_hash, plan_revision, signed_at)
     VALUES ($1, $2, $3, $4, $5, $6, $7)`,
    [body.id, jobId, seal.number, operation.key, hash, job.planRevision, seal.sealedAt],
  )
  await client.query(
    'INSERT INTO signature (sign_off_id, person_id) SELECT $1, unnest($2::uuid[])', [
      body.id, signers.map(({ id }) => id),
    ],
  )
  await client.query(
    'INSERT INTO sign_off_reading (sign_off_id, reading_id) SELECT $1, unnest($2::uuid[])',
    [body.id, readings.map(({ id }) => id)],
  )
  await projectOperations(client, jobId)
  return {
    id: body.id, sealNumber: seal.number, hash: seal.hash, by: signers.map(({ name }) => name),
    signedAt: seal.sealedAt.toISOString(), reopened: null,
  }
}

/**
 * @throws ServiceError `operation-signed`, `operation-not-reachable`, or `operation-not-complete` saying what
 * is missing
 */
function requireReady(standing: Standing, requirements: readonly { key: string; title: string }[]): void {
  const { operation } = standing
  if (standing.signOff !== null) {
    throw new ServiceError(
      'operation-signed', `“${operation.title}” is signed already.`,
    )
  }
  refuseUnreached(operation, standing.waitsFor)
  const titles = new Map(requirements.map(({ key, title }) => [key, title]))
  const obstacles = obstaclesOf(standing, (key) => titles.get(key) ?? key)
  if (obstacles.length > 0) {
    throw new ServiceError(
      'operation-not-complete', `“${operation.title}” cannot be signed yet. ${sentences(obstacles)}`,
    )
  }
}

function sentences(parts: readonly string[]): string {
  return parts.map((part) => `${part.charAt(0).toUpperCase()}${part.slice(1)}.`).join(' ')
}

/** The people who sign, in the order in which they did. */
async function loadSigners(client: PoolClient, ids: readonly string[]): Promise<Signer[]> {
  const { rows } = await client.query<Signer>(
    `SELECT id, name FROM person WHERE id = ANY ($1) ORDER BY array_position($1, id)`, [ids],
  )
  return rows
}
