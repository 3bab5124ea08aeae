import { workingHours, type ScheduleInput, type ScheduleJob } from '../src/index.ts'
import { generator } from './timing.ts'

const kinds = ['wash', 'inspection', 'hone', 'mill', 'crank-grinder', 'balancer', 'rod-hone', 'clean-bench', 'assembly', 'office']
const day = [[480, 720], [780, 1_020]] as const
const operationsOfJob = 30

/**
 * A shop with some open jobs of 30 operations: two benches of each kind for every 250 jobs, each operation waiting for one or
 * two before it, promises spread over the time that the work needs. Invented.
 */
export function shopOf(jobCount: number): ScheduleInput {
  const random = generator(jobCount)
  const copies = Math.max(1, Math.ceil(jobCount / 125))
  const hours = workingHours([day, day, day, day, day, [], []], 1_500)
  const jobs = Array.from({ length: jobCount }, (_, job): ScheduleJob => ({
    key: `job-${job}`,
    promisedAt: 10_000 + Math.floor(random() * 400_000),
    operations: Array.from({ length: operationsOfJob }, (__, at) => ({
      key: `step-${at}`,
      benchKind: kinds[Math.floor(random() * kinds.length)] ?? null,
      minutes: 30 + Math.floor(random() * 150),
      after: at === 0 ? [] : [...new Set([at - 1, Math.floor(random() * at)])].map((before) => `step-${before}`),
    })),
  }))
  const benches = kinds.flatMap((kind) => Array.from({ length: copies }, (_, copy) => ({ key: `${kind}-${copy}`, kind, hours })))
  return { now: 0, benches, jobs }
}
