import type { confirmSignOffs as confirmRoute } from '@tenths/contract'
import type { PoolClient } from 'pg'
import { sealSignOff } from '../bench/seal-sign-off.ts'
import type { Caller, CommandContext, CommandInput } from '../commands/command.ts'
import { ServiceError } from '../http/problem.ts'
import type { Answer } from '../http/register.ts'
import { verifyPin } from '../people/pin.ts'

type Route = typeof confirmRoute
type Result = Answer<Route>['results'][number]

/** Checks the PIN before anything is begun: a wrong one is counted although nothing is confirmed. */
export async function checkConfirmingPin(
  { shop, person, deviceId, now }: Caller, { body }: CommandInput<Route>,
): Promise<void> {
  await verifyPin(shop.pool, {
    personId: person.id, pin: body.pin, device: deviceId, pepper: shop.secrets.pinPepper, now,
  })
}

/**
 * Confirms what a person marked as signed, job by job in the order of each route, so that a step is sealed before
 * those behind it. One that no longer fits does not keep the others back: it is to be signed again.
 */
export async function confirmSignOffs(
  { client, person, announce }: CommandContext, { body }: CommandInput<Route>,
): Promise<Answer<Route>> {
  const pending = await lockAndLoad(client, body.ids, person.id)
  if (pending.length < new Set(body.ids).size) {
    throw new ServiceError('not-found', 'Some of these do not wait for you: look at the list again.', 'ids')
  }
  const jobs = [...new Set(pending.map(({ jobId }) => jobId))]
  announce({ kind: 'confirm-sign-offs', ...(jobs.length === 1 && jobs[0] !== undefined && { jobId: jobs[0] }) })
  const results: Result[] = []
  for (const one of pending) results.push(await confirm(client, one, person.id))
  return { results }
}

interface Pending {
  readonly id: string
  readonly jobId: string
  readonly jobNumber: number
  readonly operationKey: string
  readonly title: string
  readonly definitionHash: string
  readonly readings: readonly string[]
  readonly signers: readonly string[]
  readonly deviceAt: Date
  /** Where it was marked as signed, whatever device it is confirmed on. */
  readonly deviceId: string | null
  /** Why it is to be signed again since an earlier confirmation. */
  readonly reason: string | null
}

/** Locks their jobs, always in the same order, and reads them in the order in which they can be sealed. */
async function lockAndLoad(client: PoolClient, ids: readonly string[], personId: string): Promise<Pending[]> {
  await client.query(
    `SELECT FROM job WHERE id IN (SELECT job_id FROM pending_sign_off WHERE id = ANY ($1))
      ORDER BY id FOR NO KEY UPDATE`, [ids],
  )
  const { rows } = await client.query<Pending>(
    `SELECT pending.id, pending.job_id AS "jobId", job.number AS "jobNumber",
            pending.operation_key AS "operationKey",
            coalesce(step.title, pending.operation_key) AS title,
            pending.definition_hash AS "definitionHash", pending.readings, pending.signers,
            pending.device_at AS "deviceAt", pending.device_id AS "deviceId",
            (SELECT reason FROM pending_end WHERE pending_sign_off_id = pending.id
              ORDER BY ended_at LIMIT 1) AS reason
       FROM pending_sign_off AS pending
       JOIN job ON job.id = pending.job_id
       LEFT JOIN operation_state AS step
         ON step.job_id = pending.job_id AND step.operation_key = pending.operation_key
      WHERE pending.id = ANY ($1) AND $2 = ANY (pending.signers)
      ORDER BY job.number, step.ordinal, pending.received_at, pending.id`,
    [ids, personId],
  )
  return rows
}

async function confirm(client: PoolClient, pending: Pending, personId: string): Promise<Result> {
  const { id, jobId, jobNumber, operationKey, title, definitionHash, readings, signers, deviceId } = pending
  const result = (outcome: Result['outcome'], reason: string | null = null): Result =>
    ({ id, jobNumber, title, outcome, reason })
  if (pending.reason !== null) return result('sign-again', pending.reason)
  const confirmed = await keepConfirmation(client, id, personId)
  if (confirmed.length < signers.length) return result('waits-for-other')
  try {
    await sealSignOff(client, {
      id, jobId, operationKey, definitionHash, signers, deviceId,
      withoutNetwork: { signedAt: pending.deviceAt.toISOString(), confirmed, readings },
    })
    return result('sealed')
  } catch (error) {
    if (!(error instanceof ServiceError)) throw error
    await client.query(
      `INSERT INTO pending_end (pending_sign_off_id, kind, reason, person_id) VALUES ($1, 'sign-again', $2, $3)`,
      [id, error.message, personId],
    )
    return result('sign-again', error.message)
  }
}

/** Keeps that this person's PIN was right. @returns all who have confirmed by now, the first one first */
async function keepConfirmation(
  client: PoolClient, id: string, personId: string,
): Promise<{ person: string; at: string }[]> {
  await client.query(
    `INSERT INTO pending_confirmation (pending_sign_off_id, person_id) VALUES ($1, $2)
     ON CONFLICT (pending_sign_off_id, person_id) DO NOTHING`, [id, personId],
  )
  const { rows } = await client.query<{ person: string; at: Date }>(
    `SELECT person_id AS person, confirmed_at AS at FROM pending_confirmation
      WHERE pending_sign_off_id = $1 ORDER BY confirmed_at, person_id`, [id],
  )
  return rows.map(({ person, at }) => ({ person, at: at.toISOString() }))
}
