import { once } from 'node:events'
import { Worker } from 'node:worker_threads'
import { median, promiseCounts, type PromiseCounts } from '../src/index.ts'
import type { Figure } from './figure.ts'
import type { Order } from './futures-worker.ts'
import { shopOf } from './shop.ts'
import { generator, medianMilliseconds, processorMilliseconds } from './timing.ts'

const threads = 2

/** 1,000 futures of 500 jobs on two threads, and how one thread's time grows with the jobs. */
export async function futuresFigures(): Promise<Figure[]> {
  const { wall, processor } = await onThreads(500, 1_000, 3)
  return [
    {
      figure: '1000 futures of 500 jobs of 30 operations on two threads', value: wall / 1_000, unit: 's',
      limit: { kind: 'at most', value: 2 },
      comparedWith: `${(processor / 1_000).toPrecision(3)} s of the processor’s time, which two free cores share`,
    },
    ...growthFigures(),
  ]
}

/** The median of some rounds, from the word go to the last answer: milliseconds on the wall, and of the processor in all. */
async function onThreads(jobs: number, futures: number, rounds: number): Promise<{ wall: number; processor: number }> {
  const workers = Array.from({ length: threads }, () => new Worker(new URL('./futures-worker.js', import.meta.url)))
  const send = (worker: Worker, order: Order) => worker.postMessage(order)
  try {
    for (const worker of workers) send(worker, { kind: 'build', jobs })
    const walls: number[] = []
    const processors: number[] = []
    for (let round = -1; round < rounds; round += 1) {
      const answers = workers.map((worker) => once(worker, 'message'))
      const start = { wall: performance.now(), processor: processorMilliseconds() }
      workers.forEach((worker, seed) => send(worker, { kind: 'play', futures: futures / threads, seed: seed + 1 }))
      const played = (await Promise.all(answers)).map(([counts]) => (counts as PromiseCounts).futures)
      if (played.reduce((sum, count) => sum + count, 0) !== futures) throw new Error('A thread has not played its futures.')
      // the first round builds the shop and warms up
      if (round < 0) continue
      walls.push(performance.now() - start.wall)
      processors.push(processorMilliseconds() - start.processor)
    }
    return { wall: median(walls), processor: median(processors) }
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()))
  }
}

/** Time for 20 futures at 125 to 1000 jobs; each doubling against 2n log 2n / n log n, with a quarter for a shared machine. */
function growthFigures(): Figure[] {
  const sizes = [125, 250, 500, 1_000]
  const times = sizes.map((jobs) => {
    const input = shopOf(jobs)
    return medianMilliseconds(5, 1, () => promiseCounts(input, 20, generator(3)))
  })
  return sizes.slice(1).map((jobs, index): Figure => {
    const [before, after] = [times[index] ?? Number.NaN, times[index + 1] ?? Number.NaN]
    const operations = jobs * 30
    const allowed = (2 * Math.log(operations)) / Math.log(operations / 2)
    return {
      figure: `growth from ${jobs / 2} to ${jobs} jobs over n log n`, value: after / before / allowed, unit: 'ratio',
      limit: { kind: 'at most', value: 1.25 }, comparedWith: `${before.toPrecision(3)} ms, ${after.toPrecision(3)} ms for 20 futures`,
    }
  })
}
