import type { Plan } from '@tenths/domain'
import type { PoolClient } from 'pg'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'
import { loadEvidence } from '../judging/load-evidence.ts'
import { obstaclesOf } from '../judging/obstacles.ts'
import { projectOperations } from '../judging/project-operations.ts'
import { standingsOf, type Standing } from '../judging/standing.ts'
import { loadSealedLots } from '../lots/load-lots.ts'
import { loadSealedPhotographs } from '../photographs/load-photographs.ts'
import { definitionHash } from '../plans/definition-hash.ts'
import { appendSeal } from '../seals/seal.ts'
import { loadSignOffPages, type WireSignOff } from './load-sign-offs.ts'
import { operationOf, refuseUnreached } from './reach.ts'
import { loadReliedReadings, readingsReliedOn } from './relied-readings.ts'
import { loadZerosOf } from './sealed-zeros.ts'
import { signOffPayload, type Signer, type WithoutNetwork } from './sign-off-payload.ts'
import { endWork } from './work-time.ts'

/** A signature whose people have proven who they are. */
export interface ProvenSignature {
  readonly id: string
  readonly jobId: string
  readonly operationKey: string
  /** The step as its signers saw it. */
  readonly definitionHash: string
  /** Who signs, in the order in which they did. */
  readonly signers: readonly string[]
  /** The bench device on which it was signed; null for another browser. */
  readonly deviceId: string | null
  /** What a signature that was given without a network says beside, and the readings it relied on; null at once. */
  readonly withoutNetwork: (WithoutNetwork & { readonly readings: readonly string[] }) | null
}

/**
 * Signs an operation as the bench saw it, and seals what was measured, seen and judged. Everything is checked
 * before anything is written: a refusal leaves the transaction as it was.
 * @throws ServiceError `operation-changed`, `operation-signed`, `operation-not-reachable`,
 *   `operation-not-complete`, `second-person-needed`, `reading-not-latest` or as lockJob
 */
export async function sealSignOff(client: PoolClient, signature: ProvenSignature): Promise<WireSignOff> {
  const { id, jobId, operationKey, withoutNetwork } = signature
  const job = await lockJob(client, jobId)
  const before = (await loadSignOffPages(client, jobId, operationKey)).find((known) => known.id === id)
  if (before !== undefined) return before

  const evidence = await loadEvidence(client, jobId)
  const operation = operationOf(evidence.plan, operationKey)
  const hash = definitionHash(evidence.plan, operation.key)
  if (hash !== signature.definitionHash) {
    throw new ServiceError(
      'operation-changed', `“${operation.title}” was planned otherwise meanwhile: look at it again, then sign.`, 'definitionHash',
    )
  }
  const standing = standingsOf(evidence).find((one) => one.operation.key === operation.key)
  if (standing === undefined) throw new Error(`Operation ${operation.key} of the plan stands nowhere.`)
  requireReady(standing, evidence.plan.requirements)
  if (signature.signers.length < operation.signatures) {
    throw new ServiceError(
      'second-person-needed', `“${operation.title}” takes two people’s signatures.`, 'signatures',
    )
  }
  const relied = readingsReliedOn(standing, evidence)
  if (withoutNetwork !== null) requireSameReadings(operation.title, relied, withoutNetwork.readings)

  const readings = await loadReliedReadings(client, relied)
  const signers = await loadSigners(client, signature.signers)
  const partAt = new Map(evidence.placed.map(({ place, partId }) => [place, partId]))
  const seal = await appendSeal(client, {
    jobId,
    kind: 'sign-off',
    payload: signOffPayload({
      id, hash, evidence, standing, readings, signers,
      zeros: await loadZerosOf(client, readings.map((reading) => reading.id)),
      withoutNetwork: withoutNetwork && { signedAt: withoutNetwork.signedAt, confirmed: withoutNetwork.confirmed },
      lots: await loadSealedLots(client, (operation.lots ?? []).flatMap((place) => partAt.get(place) ?? [])),
      photographs: await loadSealedPhotographs(client, jobId, operation.key),
    }),
  })
  await client.query(
    `INSERT INTO sign_off (id, job_id, seal_number, operation_key, definition_hash, plan_revision, signed_at, device_id)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8)`,
    [id, jobId, seal.number, operation.key, hash, job.planRevision, seal.sealedAt, signature.deviceId],
  )
  await client.query(
    'INSERT INTO signature (sign_off_id, person_id) SELECT $1, unnest($2::uuid[])', [
      id, signers.map((signer) => signer.id),
    ],
  )
  await client.query(
    'INSERT INTO sign_off_reading (sign_off_id, reading_id) SELECT $1, unnest($2::uuid[])',
    [id, readings.map((reading) => reading.id)],
  )
  await endWork(client, jobId, operation.key)
  await projectOperations(client, jobId)
  return {
    id, sealNumber: seal.number, hash: seal.hash, by: signers.map(({ name }) => name),
    signedAt: seal.sealedAt.toISOString(), givenAt: withoutNetwork?.signedAt ?? null, reopened: null,
  }
}

/**
 * @throws ServiceError `operation-signed`, `operation-not-reachable`, or `operation-not-complete` saying what
 * is missing
 */
function requireReady(standing: Standing, requirements: Plan['requirements']): void {
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

/** What was read again, corrected or added since was not there when the step was marked as signed. */
function requireSameReadings(title: string, now: readonly string[], then: readonly string[]): void {
  const seen = new Set(then)
  if (now.length === seen.size && now.every((id) => seen.has(id))) return
  throw new ServiceError(
    'reading-not-latest', `Values that “${title}” relies on were corrected or taken again since it was signed: look at it again, then sign.`,
  )
}

/** The people who sign, in the order in which they did. */
async function loadSigners(client: PoolClient, ids: readonly string[]): Promise<Signer[]> {
  const { rows } = await client.query<Signer>(
    `SELECT id, name FROM person WHERE id = ANY ($1) ORDER BY array_position($1, id)`, [ids],
  )
  return rows
}
