import type { PlanInput, RuleRevision, SheetLimit } from '../../../packages/domain/src/index.ts'
import { pistonSheet } from '../../../prisma/demo/engines/flat-four.ts'
import { engines } from '../../../prisma/demo/engines/index.ts'
import { jobs } from '../../../prisma/demo/jobs/index.ts'
import type { DemoJob } from '../../../prisma/demo/jobs/job.ts'

/** The one rule of the demo shop's own: rails a thousandth wider than the starter rule asks. */
const shopRules: readonly RuleRevision[] = [
  { fit: 'oil-rail-end-gap', revision: 1, parameters: { low: 406_400 }, source: 'the shop’s own practice' },
]

/** Makers' sheets of a job as it stands at the end: one job's piston maker answered after the first plan. */
function sheetsOf(job: DemoJob): readonly SheetLimit[] {
  if (job.sheetsMissing === true) return []
  const sheets = [...engines[job.engine].sheets, ...(job.sheets ?? [])]
  return job.key === 'winch' ? [...sheets, pistonSheet] : sheets
}

/** Every demo job with what its plan is computed from. */
export const demoPlans: readonly { readonly job: string; readonly input: PlanInput }[] = jobs.map((job) => ({
  job: job.key,
  input: {
    work: job.work ?? 'short-block',
    engine: engines[job.engine].engine,
    parts: job.parts ?? engines[job.engine].parts,
    duty: job.duty,
    options: job.options,
    rules: shopRules,
    sheets: sheetsOf(job),
  },
}))
