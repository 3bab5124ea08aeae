import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { forecast } from './forecast.ts'
import { promiseCounts } from './promise-chance.ts'
import type { ScheduleInput, ScheduleJob } from './schedule-types.ts'
import { spreadTable } from './spread.ts'
import { minutesBetween, workingHours } from './working-hours.ts'

const day = [[480, 720], [780, 1020]] as const
const hours = workingHours([day, day, day, day, day, [], []], 200)
const bench = (key: string, kind: string) => ({ key, kind, hours })

function generator(seed: number): () => number {
  let state = seed
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32
  }
}

describe('a forecast', () => {
  it('works only in open hours and goes on after a break where it stopped', () => {
    const job = { key: 'a', promisedAt: 1020, operations: [{ key: 'hone', benchKind: 'hone', minutes: 300, after: [] }] }
    const result = forecast({ now: 0, benches: [bench('hone 1', 'hone')], jobs: [job] })
    expect(result.operations[0]).toMatchObject({ bench: 'hone 1', start: 480, finish: 840 })
    expect(result.jobs[0]).toEqual({ job: 'a', finish: 840, late: false })
  })

  it('lets the nearest promise go first, and does not let a bench idle while work waits', () => {
    const hone = (promisedAt: number, key: string): ScheduleJob => (
      { key, promisedAt, operations: [{ key: 'hone', benchKind: 'hone', minutes: 60, after: [] }] })
    const result = forecast({ now: 480, benches: [bench('hone 1', 'hone')], jobs: [hone(9000, 'later'), hone(2000, 'sooner')] })
    expect(result.jobs).toEqual([
      { job: 'sooner', finish: 540, late: false },
      { job: 'later', finish: 600, late: false },
    ])
  })

  it('says so when the working hours given end before the job does', () => {
    const job = { key: 'a', promisedAt: 1020, operations: [{ key: 'x', benchKind: 'hone', minutes: 1_000_000, after: [] }] }
    expect(forecast({ now: 0, benches: [bench('hone 1', 'hone')], jobs: [job] }).jobs[0]).toEqual({ job: 'a', finish: null, late: true })
  })

  it('refuses steps that wait for each other, and work that no bench can do', () => {
    const cyclic = [
      { key: 'a', benchKind: 'hone', minutes: 1, after: ['b'] },
      { key: 'b', benchKind: 'hone', minutes: 1, after: ['a'] },
    ]
    const input = (operations: ScheduleJob['operations']): ScheduleInput => (
      { now: 0, benches: [bench('hone 1', 'hone')], jobs: [{ key: 'j', promisedAt: 1, operations }] })
    expect(() => forecast(input(cyclic))).toThrow(expect.objectContaining({ code: 'route-cyclic' }))
    expect(() => forecast(input([{ key: 'a', benchKind: 'lathe', minutes: 1, after: [] }]))).toThrow(/No bench can do lathe/)
  })

  it('never books a bench twice and never starts a step before those it waits for', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
      const random = generator(seed)
      const kinds = ['hone', 'mill', 'wash']
      const jobs = Array.from({ length: 6 }, (_, job) => ({
        key: `j${job}`,
        promisedAt: Math.floor(random() * 20_000),
        operations: Array.from({ length: 8 }, (__, at) => ({
          key: `o${at}`,
          benchKind: random() < 0.1 ? null : kinds[Math.floor(random() * 3)]!,
          minutes: 1 + Math.floor(random() * 400),
          after: at === 0 ? [] : [`o${Math.floor(random() * at)}`],
        })),
      }))
      const input = { now: 0, benches: [bench('h', 'hone'), bench('m1', 'mill'), bench('m2', 'mill'), bench('w', 'wash')], jobs }
      const { operations } = forecast(input)
      expect(operations).toHaveLength(48)
      for (const one of operations) {
        const planned = jobs.find((job) => job.key === one.job)!.operations.find(({ key }) => key === one.operation)!
        for (const key of planned.after) {
          expect(operations.find((other) => other.job === one.job && other.operation === key)!.finish).toBeLessThanOrEqual(one.start)
        }
        if (one.bench === null) continue
        expect(minutesBetween(hours, one.start, one.finish)).toBe(planned.minutes)
        for (const other of operations) {
          if (other === one || other.bench !== one.bench) continue
          expect(other.finish <= one.start || other.start >= one.finish).toBe(true)
        }
      }
    }), { numRuns: 40 })
  })
})

describe('the chance of keeping a promise', () => {
  const input = (promisedAt: number): ScheduleInput => ({
    now: 480,
    benches: [bench('hone 1', 'hone')],
    jobs: [{ key: 'a', promisedAt, operations: [{ key: 'hone', benchKind: 'hone', minutes: 120, after: [] }] }],
  })

  it('is certain far before the promise, nil when the minutes do not fit, and about even at the median', () => {
    expect(promiseCounts(input(5000), 500, generator(1)).jobs[0]!.kept).toBe(500)
    expect(promiseCounts(input(500), 500, generator(1)).jobs[0]!.kept).toBe(0)
    const median = 480 + 120 / Math.sqrt(1 + 0.25 ** 2)
    const kept = promiseCounts(input(median), 4000, generator(1)).jobs[0]!.kept / 4000
    expect(kept).toBeGreaterThan(0.45)
    expect(kept).toBeLessThan(0.55)
  })

  it('is the same again for the same generator, and equals the forecast where nothing varies', () => {
    expect(promiseCounts(input(610), 200, generator(7))).toEqual(promiseCounts(input(610), 200, generator(7)))
    expect(promiseCounts(input(600), 10, generator(7), 0).jobs[0]!.kept).toBe(10)
    expect(promiseCounts(input(599), 10, generator(7), 0).jobs[0]!.kept).toBe(0)
  })
})

describe('the spread of durations', () => {
  it('has mean 1 and the relative standard deviation asked for', () => {
    const table = spreadTable(0.25)
    const mean = table.reduce((sum, factor) => sum + factor, 0) / table.length
    const deviation = Math.sqrt(table.reduce((sum, factor) => sum + (factor - mean) ** 2, 0) / table.length)
    expect(mean).toBeCloseTo(1, 12)
    expect(deviation).toBeCloseTo(0.25, 2)
  })
})
