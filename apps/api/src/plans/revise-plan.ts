import { plan, type Plan, type PlanInput } from '@tenths/domain'
import type { PoolClient } from 'pg'
import { lockJob } from '../commands/job-lock.ts'
import type { Queryable } from '../database/queryable.ts'
import { ServiceError } from '../http/problem.ts'
import { loadPlan, loadSignOffs } from '../judging/load-evidence.ts'
import { projectOperations } from '../judging/project-operations.ts'
import { createParts } from '../parts/create-parts.ts'
import { reOpen } from '../re-opening/re-open.ts'
import { signaturesOn } from '../re-opening/relying.ts'
import { changesBetween, type OperationChange } from './changes.ts'
import { rulesInForce } from './rules.ts'
import { storePlan } from './store-plan.ts'

/** What may be wished otherwise about a job; engine and work stay. */
export type PlanWish = Pick<PlanInput, 'duty' | 'parts' | 'options' | 'sheets'>

/**
 * What a new plan would change, with the shop's rules of now: every operation that would be defined
 * otherwise, and whether a signature would re-open. Nothing is stored.
 */
export async function planAsWished(
  database: Queryable, jobId: string, wish: PlanWish,
): Promise<{ input: PlanInput; made: Plan; changes: OperationChange[] }> {
  const { plan: before } = await loadPlan(database, jobId)
  const input: PlanInput = { ...before.input, ...wish, rules: await rulesInForce(database) }
  const made = plan(input)
  return { input, made, changes: changesBetween(before, made, await loadSignOffs(database, jobId)) }
}

/**
 * Makes a new plan the one in force. Every reading stays; exactly the live signatures whose operation is
 * defined otherwise now are re-opened, each with a seal.
 * @throws ServiceError `edit-stale` when the job was planned again since `basedOn`
 */
export async function applyPlan(
  client: PoolClient,
  { jobId, wish, reason, basedOn, personId }: {
    jobId: string; wish: PlanWish; reason: string; basedOn: number; personId: string
  },
): Promise<{ revision: number; changes: OperationChange[] }> {
  const job = await lockJob(client, jobId)
  if (job.planRevision !== basedOn) {
    throw new ServiceError(
      'edit-stale', `This job has plan ${job.planRevision} by now: look at it before you change it.`,
      'basedOn',
    )
  }
  const { input, changes } = await planAsWished(client, jobId, wish)
  const made = await storePlan(client, { jobId, input, reason, personId })
  await createParts(client, { jobId, plan: made, personId })
  const reopening = await signaturesOn(
    client, jobId, changes.filter(({ reopens }) => reopens).map(({ key }) => key),
  )
  await reOpen(client, reopening, { jobId, personId, cause: 'plan', reason })
  await projectOperations(client, jobId)
  return { revision: basedOn + 1, changes }
}
