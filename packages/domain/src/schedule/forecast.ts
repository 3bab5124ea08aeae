import { NEVER } from './bench-hours.ts'
import { Dispatcher } from './dispatch.ts'
import { compileNetwork } from './network.ts'
import type { Forecast, ForecastJob, ForecastOperation, ScheduleInput } from './schedule-types.ts'

/**
 * The finite-capacity forecast: what runs when and where if every operation takes its standard minutes, benches are worked
 * in their hours, and the nearest promise goes first.
 * @throws DomainError as `compileNetwork`
 * @formula finite-capacity
 */
export function forecast(input: ScheduleInput): Forecast {
  const network = compileNetwork(input)
  const dispatcher = new Dispatcher(network, input)
  dispatcher.play(network.minutes)
  const operations: ForecastOperation[] = []
  const finish = new Float64Array(network.jobs.length)
  for (let number = 0; number < network.operationCount; number += 1) {
    const job = network.jobOf[number]!
    const end = dispatcher.finish[number]!
    finish[job] = Math.max(finish[job]!, end)
    if (end === NEVER) continue
    const bench = dispatcher.benchOf[number]!
    operations.push({
      job: network.jobs[job]!.key,
      operation: network.keys[number]!,
      bench: bench < 0 ? null : input.benches[bench]!.key,
      start: dispatcher.start[number]!,
      finish: end,
    })
  }
  const jobs = network.jobs.map((job, index): ForecastJob => {
    const end = job.operations.length === 0 ? input.now : finish[index]!
    return { job: job.key, finish: end === NEVER ? null : end, late: end > job.promisedAt }
  })
  return { operations, jobs }
}
