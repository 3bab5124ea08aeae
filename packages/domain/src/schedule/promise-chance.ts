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
  const { finish } = dispatcher
  const kept = new Int32Array(network.jobs.length)
  for (let future = 0; future < futures; future += 1) {
    for (let number = 0; number < minutes.length; number += 1) {
      minutes[number] = network.minutes[number]! * factors[(random() * factors.length) | 0]!
    }
    dispatcher.play(minutes)
    // a job's operations are numbered one after another
    let number = 0
    for (let job = 0; job < kept.length; job += 1) {
      const promisedAt = network.promisedAt[job]!
      let isKept = input.now <= promisedAt
      for (const end = network.firstOfJob[job + 1]!; number < end; number += 1) {
        if (finish[number]! > promisedAt) isKept = false
      }
      if (isKept) kept[job]! += 1
    }
  }
  return { futures, jobs: network.jobs.map((job, index) => ({ job: job.key, kept: kept[index]! })) }
}
