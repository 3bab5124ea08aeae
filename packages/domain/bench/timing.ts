import { median } from '../src/index.ts'

/** The median of several timings of one call, in milliseconds, after runs that only warm it up. */
export function medianMilliseconds(runs: number, warmUp: number, run: () => unknown): number {
  for (let time = 0; time < warmUp; time += 1) run()
  return median(Array.from({ length: runs }, () => {
    const start = performance.now()
    run()
    return performance.now() - start
  }))
}

/** Medians of calls that take turns, so that whatever else the machine does slows them alike. Milliseconds. */
export function mediansTurnByTurn(
  runs: number, warmUp: number, calls: readonly (() => unknown)[],
): readonly number[] {
  const times = calls.map((): number[] => [])
  for (let turn = -warmUp; turn < runs; turn += 1) {
    for (const [index, call] of calls.entries()) {
      const start = performance.now()
      call()
      if (turn >= 0) times[index]?.push(performance.now() - start)
    }
  }
  return times.map(median)
}

/** Uniform numbers from 0 up to 1, always the same: a benchmark measures the same work each time. */
export function generator(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32
  }
}
