import type { Operation, Plan } from '@tenths/domain'
import type { PoolClient } from 'pg'
import { ServiceError } from '../http/problem.ts'
import { allBefore, unsignedBefore } from '../judging/route-order.ts'

/** The operation of that key. @throws ServiceError `operation-unknown` */
export function operationOf(plan: Plan, key: string): Operation {
  const operation = plan.operations.find((candidate) => candidate.key === key)
  if (operation === undefined) {
    throw new ServiceError(
      'operation-unknown', 'This job’s route has no such step.', 'operationKey',
    )
  }
  return operation
}

/**
 * Refuses work on an operation while one before it is not signed: nothing is measured before the wash before
 * it. Work that was done without a network goes on behind steps that are marked as signed, and says so; such a
 * step is still not signed, and neither is anything after it until it is.
 * @throws ServiceError `operation-not-reachable`, naming what comes first
 */
export async function requireReachable(
  client: PoolClient,
  { jobId, plan, operation, behind = false }: {
    jobId: string; plan: Plan; operation: Operation; behind?: boolean | undefined
  },
): Promise<void> {
  const { rows } = await client.query<{ key: string }>(
    `SELECT operation_key AS key FROM operation_state WHERE job_id = $1 AND state = 'signed'
     UNION
     SELECT operation_key FROM pending_sign_off AS pending WHERE $2 AND job_id = $1
        AND NOT EXISTS (SELECT FROM pending_end WHERE pending_sign_off_id = pending.id)
        AND NOT EXISTS (SELECT FROM sign_off WHERE sign_off.id = pending.id)`,
    [jobId, behind],
  )
  const passed = new Set(rows.map(({ key }) => key))
  refuseUnreached(operation, unsignedBefore(
    plan.operations, allBefore(plan.operations).get(operation.key) ?? new Set(), (key) => passed.has(key),
  ))
}

/** @throws ServiceError `operation-not-reachable` unless nothing is waited for */
export function refuseUnreached(operation: Operation, waitsFor: readonly Operation[]): void {
  if (waitsFor.length === 0) return
  const titles = waitsFor.slice(0, 3).map(({ title }) => `“${title}”`).join(', ')
  const more = waitsFor.length > 3 ? ` and ${waitsFor.length - 3} more` : ''
  throw new ServiceError(
    'operation-not-reachable', `“${operation.title}” waits for ${titles}${more} to be signed first.`,
  )
}
