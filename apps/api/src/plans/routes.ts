import { listRules, previewPlan, readPlan, revisePlan, reviseRule } from '@tenths/contract'
import type { Plan } from '@tenths/domain'
import type { FastifyInstance } from 'fastify'
import type { z } from 'zod'
import { command } from '../commands/command.ts'
import { partsOf } from '../engines/wire-engine.ts'
import { ServiceError } from '../http/problem.ts'
import { register, type Answer } from '../http/register.ts'
import { findJob } from '../judging/find-job.ts'
import { loadPlan } from '../judging/load-evidence.ts'
import { applyPlan, planAsWished, type PlanWish } from './revise-plan.ts'
import { addRuleRevision } from './revise-rule.ts'
import { listAllRules } from './rules.ts'

/** Fit sheet, route and the shop's rules. */
export function planRoutes(app: FastifyInstance): void {
  const { pool } = app.shop

  register(app, readPlan, async (_context, { params }) => {
    const { id } = await findJob(pool, { number: params.number })
    const { planRevision, plan } = await loadPlan(pool, id)
    const { input, ...sheet } = plan
    const { engine, parts, duty, options, sheets } = input
    return {
      revision: planRevision, engine, parts, duty, options, sheets, ...sheet
    } as unknown as Answer<typeof readPlan>
  })

  register(app, previewPlan, async (_context, { params, body }) => {
    const job = await findJob(pool, { id: params.id })
    if (job.state === 'handed-over') throw new ServiceError('job-closed', `Job ${job.number} is handed over.`)
    const { made, changes } = await planAsWished(pool, params.id, wishOf(body))
    return { changes, findings: findingsOf(made) }
  })

  command(app, revisePlan, async ({ client, person, announce }, { params, body }) => {
    announce({ kind: 'revise-plan', jobId: params.id })
    const { reason, basedOn } = body
    return applyPlan(client, {
      jobId: params.id, wish: wishOf(body), reason, basedOn, personId: person.id,
    })
  })

  register(app, listRules, async () => ({ rules: await listAllRules(pool) }))

  command(app, reviseRule, ({ client, person }, { params, body }) =>
    addRuleRevision(client, { fit: params.fit, ...body, personId: person.id }))
}

function wishOf({ duty, parts, options, sheets }: z.output<(typeof previewPlan)['body']>): PlanWish {
  return { duty, parts: partsOf(parts), options, sheets }
}

function findingsOf({ findings }: Plan): Answer<typeof previewPlan>['findings'] {
  return findings.map((finding) => ({ ...finding, worked: [...finding.worked] }))
}
