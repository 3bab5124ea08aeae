import { DomainError } from '../errors.ts'
import { Dispatcher } from './dispatch.ts'
import { compileNetwork } from './network.ts'
import type { ScheduleInput } from './schedule-types.ts'
import { spreadTable } from './spread.ts'

/** How often each job was done by its promise; counts of several runs (threads) may simply be added. */
export interface PromiseCounts {
  readonly futures: number
  /** Jobs by key, in order of promise. */
  readonly jobs: readonly { readonly job: string; readonly kept: number }[]
}

/**
 * Plays `futures` futures in which each operation takes its standard minutes times a log-normal factor, and counts how
 * often each promise is kept. The chance of keeping it is kept / futures.
 * @param random uniform numbers from 0 up to but not including 1; the caller owns the generator and its seed
 * @param spread standard deviation of a duration relative to its mean, 0.25 for the shop's usual ± 25 %
 * @throws DomainError as `compileNetwork`; `value-out-of-range` when futures or spread make no sense
 * @formula promise-chance
 */
export function promiseCounts(input: ScheduleInput, futures: number, random: () => number, spread = 0.25): PromiseCounts {
  if (!Number.isSafeInteger(futures) || futures < 1) {
    throw new DomainError('value-out-of-range', `${futures} futures cannot be played.`, 'futures')
  }
  const network = compileNetwork(input)
  const dispatcher = new Dispatcher(network, input)
  const factors = spreadTable(spread)
  const minutes = new Float64Array(network.operationCount)
  const kept = new Int32Array(network.jobs.length)
  const finish = new Float64Array(network.jobs.length)
  for (let future = 0; future < futures; future += 1) {
    for (let number = 0; number < minutes.length; number += 1) {
      minutes[number] = network.minutes[number]! * factors[Math.floor(random() * factors.length)]!
    }
    dispatcher.play(minutes)
    finish.fill(input.now)
    for (let number = 0; number < minutes.length; number += 1) {
      const job = network.jobOf[number]!
      if (dispatcher.finish[number]! > finish[job]!) finish[job] = dispatcher.finish[number]!
    }
    for (let job = 0; job < kept.length; job += 1) {
      if (finish[job]! <= network.promisedAt[job]!) kept[job]! += 1
    }
  }
  return { futures, jobs: network.jobs.map((job, index) => ({ job: job.key, kept: kept[index]! })) }
}
