import { readDesk } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { loadFindings } from '../findings/load-findings.ts'
import { register } from '../http/register.ts'
import { readSummaries } from '../jobs/job-summary.ts'
import { readToday } from '../jobs/today.ts'
import { loadOpenJobs, loadPerBench } from './load.ts'
import { loadPace } from './pace.ts'
import { isThisWeek, riskOf } from './risk.ts'

/** The owner's view of the shop: the same few statements however many jobs are open. */
export function deskRoutes(app: FastifyInstance): void {
  const { pool } = app.shop
  register(app, readDesk, async ({ shop }) => {
    const today = await readToday(pool, shop.now())
    const jobs = (await loadOpenJobs(pool)).map(
      (job) => ({ ...job, ...riskOf(job.remainingMinutes, today, job.promisedOn) }),
    )
    const atRisk = jobs.filter(({ isAtRisk }) => isAtRisk)
    const summaries = await readSummaries(pool, atRisk.map(({ id }) => id), today)
    return {
      today,
      load: await loadPerBench(pool),
      pace: await loadPace(pool),
      // The nearest promise comes first: an overdue one is the worst.
      atRisk: summaries.flatMap((summary) => {
        const job = atRisk.find(({ id }) => id === summary.id)
        return job === undefined ? [] : [{
          ...summary, remainingMinutes: job.remainingMinutes, workingDaysLeft: job.workingDaysLeft,
          reason: job.reason,
        }]
      }),
      findings: await loadFindings(pool, { state: 'open' }),
      openJobs: jobs.length,
      promisedThisWeek: jobs.filter(({ promisedOn }) => isThisWeek(today, promisedOn)).length,
    }
  })
}
