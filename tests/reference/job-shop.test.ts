import { shortenJobShop } from '@tenths/domain'
import type { JobShop } from '@tenths/domain'
import { describe, expect, it } from 'vitest'

/**
 * Benchmark instances ft06 (Fisher and Thompson 1963) and la05 (Lawrence 1984) with their proven optima, as
 * kept in the public JSPLIB collection (GitHub tamy0612/JSPLIB, commit eea2b60). Tolerance none: the optimum
 * is a whole number, and a schedule shorter than it would be infeasible.
 */
const instances = [
  {
    name: 'ft06', optimum: 55, machines: 6,
    text: `2 1 0 3 1 6 3 7 5 3 4 6
1 8 2 5 4 10 5 10 0 10 3 4
2 5 3 4 5 8 0 9 1 1 4 7
1 5 0 5 2 5 3 3 4 8 5 9
2 9 1 3 4 5 5 4 0 3 3 1
1 3 3 3 5 9 0 10 4 4 2 1`,
  },
  {
    name: 'la05', optimum: 593, machines: 5,
    text: `1 72 0 87 4 95 2 66 3 60
4 5 3 35 0 48 2 39 1 54
1 46 3 20 2 21 0 97 4 55
0 59 3 19 4 46 1 34 2 37
4 23 2 73 3 25 1 24 0 28
3 28 0 45 4 5 1 78 2 83
0 53 3 71 1 37 4 29 2 12
4 12 2 87 3 33 1 55 0 38
2 49 3 83 1 40 0 48 4 7
2 65 3 17 0 90 4 27 1 23`,
  },
]

function parse(text: string, machines: number): JobShop {
  const jobs = text.split('\n').map((line) => {
    const numbers = line.trim().split(/\s+/).map(Number)
    return Array.from({ length: numbers.length / 2 }, (_, at) => ({ machine: numbers[2 * at]!, duration: numbers[2 * at + 1]! }))
  })
  return { machines, jobs }
}

function generator(): () => number {
  let state = 20_261
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32
  }
}

describe('the job shop', () => {
  it.each(instances)('reaches the proven optimum of $name with a schedule that can be worked', ({ text, machines, optimum }) => {
    const shop = parse(text, machines)
    const schedule = shortenJobShop(shop, 20_000, generator())
    expect(schedule.makespan).toBe(optimum)

    const spans = shop.jobs.flatMap((job, j) => job.map(({ machine, duration }, at) => {
      const start = schedule.starts[j]![at]!
      if (at > 0) expect(start).toBeGreaterThanOrEqual(schedule.starts[j]![at - 1]! + job[at - 1]!.duration)
      return { machine, start, end: start + duration }
    }))
    expect(Math.max(...spans.map(({ end }) => end))).toBe(optimum)
    for (const one of spans) {
      for (const other of spans) {
        if (one === other || one.machine !== other.machine) continue
        expect(one.end <= other.start || other.end <= one.start).toBe(true)
      }
    }
  })
})
