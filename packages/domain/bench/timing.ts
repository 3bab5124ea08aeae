import { median } from '../src/index.ts'

/**
 * Milliseconds that the processor has spent on this program, all its threads together: what others run meanwhile is not in
 * it. On a machine of its own it is the time on the wall, a thread.
 */
export function processorMilliseconds(): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1_000
}

/** The median of several timings of one call, in the processor's milliseconds, after runs that only warm it up. */
export function medianMilliseconds(runs: number, warmUp: number, run: () => unknown): number {
  for (let time = 0; time < warmUp; time += 1) run()
  return median(Array.from({ length: runs }, () => {
    const start = processorMilliseconds()
    run()
    return processorMilliseconds() - start
  }))
}

/** How long a turn is at least, in the processor's milliseconds. */
const TURN = 20

/**
 * Medians of calls that take turns, so that a slower spell slows them alike. A turn lasts equally long for each, however often
 * it calls in it: a short call that came alone after long ones would be charged for their garbage, and for the caches that
 * they left. The processor's milliseconds a call.
 */
export function mediansTurnByTurn(turns: number, warmUp: number, calls: readonly (() => unknown)[]): readonly number[] {
  const times = calls.map((): number[] => [])
  for (let turn = -warmUp; turn < turns; turn += 1) {
    for (const [index, call] of calls.entries()) {
      const time = timeInTurn(call)
      if (turn >= 0) times[index]?.push(time)
    }
  }
  return times.map(median)
}

function timeInTurn(call: () => unknown): number {
  const start = processorMilliseconds()
  let taken = 0
  let calls = 0
  while (taken < TURN) {
    call()
    calls += 1
    taken = processorMilliseconds() - start
  }
  return taken / calls
}

/** Uniform numbers from 0 up to 1, always the same: a benchmark measures the same work each time. */
export function generator(seed: number): () => number {
  // kept as a signed number of 32 bits: beyond them a number is an object, made anew at each call
  let state = seed
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) | 0
    return (state >>> 0) / 2 ** 32
  }
}
