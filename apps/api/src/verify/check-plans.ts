import type { Plan } from '@tenths/domain'
import { definitionHashes } from '../plans/definition-hash.ts'
import { textHash } from '../seals/canonical.ts'
import type { Blame } from './fault.ts'
import { ofKind, type OpenedSeal } from './opened-seal.ts'
import type { StoredJob } from './stored-job.ts'

/**
 * Every plan's exact text against its seal, and every signature's definition against the plan it was signed
 * under: an altered limit names the step that it belongs to.
 */
export function checkPlans(
  job: StoredJob, opened: readonly OpenedSeal[], keptHashes: ReadonlyMap<string, string>, blame: Blame,
): void {
  const sealed = new Map(
    ofKind(opened, 'plan').map((seal) => [seal.payload.content.revision, seal.payload.content]),
  )
  for (const stored of job.plans) {
    const said = sealed.get(stored.revision)
    const name = `plan ${stored.revision}`
    if (said === undefined) blame(null, `${name}: no seal speaks of it`)
    else if (textHash(stored.plan) !== said.planHash) {
      blame(
        null, `${name}: its text is not the one that was sealed`,
      )
    }
    else if (said.reason !== stored.reason || said.person !== stored.person) {
      blame(
        null, `${name}: who made it, or why, is not as sealed`,
      )
    }
    checkDefinitions(job, stored, keptHashes, blame)
  }
  for (const revision of sealed.keys()) {
    if (!job.plans.some((stored) => stored.revision === revision)) {
      blame(
        null, `plan ${revision}: it was sealed and is gone`,
      )
    }
  }
  const latest = job.plans.at(-1)?.revision ?? 0
  if (latest !== job.planRevision) {
    blame(
      null, `the job follows plan ${job.planRevision}, and the latest is ${latest}`,
    )
  }
}

function checkDefinitions(
  job: StoredJob, stored: StoredJob['plans'][number], keptHashes: ReadonlyMap<string, string>, blame: Blame,
): void {
  const plan = readPlan(stored.plan)
  if (plan === null) {
    blame(null, `plan ${stored.revision}: it cannot be read`)
    return
  }
  const titles = new Map(plan.operations.map(({ key, title }) => [key, title]))
  const hashes = definitionHashes(plan)
  for (const signOff of job.signOffs.filter(({ planRevision }) => planRevision === stored.revision)) {
    if (hashes.get(signOff.operationKey) === signOff.definitionHash) continue
    blame(
      titles.get(signOff.operationKey) ?? signOff.operationKey,
      `plan ${stored.revision} does not define it as it was signed`,
    )
  }
  if (stored.revision !== job.planRevision) return
  for (const [key, hash] of hashes) {
    if (keptHashes.get(key) !== hash) {
      blame(
        titles.get(key) ?? key, 'the plan in force does not define it as the route does',
      )
    }
  }
}

function readPlan(text: string): Plan | null {
  try {
    return JSON.parse(text) as Plan
  } catch {
    return null
  }
}
