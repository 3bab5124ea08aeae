import { BenchHours, NEVER } from './bench-hours.ts'
import { FreeBenches } from './free-benches.ts'
import { NO_KIND } from './network.ts'
import type { Network } from './network.ts'
import { NumberHeap } from './number-heap.ts'
import { NumberSets } from './number-sets.ts'
import type { ScheduleInput } from './schedule-types.ts'

/**
 * Plays one future: whenever a bench is free and something waits for its kind, the nearest promise starts on it (no bench
 * idles while work waits for it). Work that a closing time interrupts goes on when the bench opens again.
 *
 * All memory is taken once, at construction; `play` may be called any number of times. n operations cost n log n at most:
 * each enters and leaves one queue of waiting work and one of running work.
 */
export class Dispatcher {
  readonly finish: Float64Array
  /** Start and bench (−1 for none) of what is finished; of anything else they say nothing. */
  readonly start: Float64Array
  readonly benchOf: Int32Array
  private readonly network: Network
  private readonly now: number
  private readonly waitingFor: Int32Array
  /** What waits for each kind, by number: the nearest promise is the least. */
  private readonly waiting: NumberSets
  private readonly free: FreeBenches
  private readonly hours: BenchHours
  /** Finish times of what runs, each a power of two times the time plus the operation's number: one number orders both. */
  private readonly running: NumberHeap
  private readonly scale: number
  /** Kinds where a bench came free or work arrived in this minute. */
  private readonly touched: Int32Array
  private touchedCount = 0
  private readonly isTouched: Uint8Array

  constructor(network: Network, input: ScheduleInput) {
    const count = network.operationCount
    this.network = network
    this.now = input.now
    this.start = new Float64Array(count)
    this.finish = new Float64Array(count)
    this.benchOf = new Int32Array(count).fill(-1)
    this.waitingFor = new Int32Array(count)
    this.waiting = new NumberSets(network.kinds.length, count)
    this.free = new FreeBenches(network.benchesOfKind)
    this.hours = new BenchHours(input.benches.map(({ hours }) => hours))
    this.running = new NumberHeap(count + 1)
    this.scale = 2 ** Math.ceil(Math.log2(count + 1))
    this.touched = new Int32Array(network.kinds.length)
    this.isTouched = new Uint8Array(network.kinds.length)
  }

  /** @param minutes what each operation takes in this future, by its number in the network */
  play(minutes: Float64Array): void {
    this.reset()
    const { running, scale, waitingFor, finish } = this
    const { operationCount, firstSuccessor, successors, kindOf } = this.network
    for (let number = 0; number < operationCount; number += 1) {
      if (waitingFor[number] === 0) this.becomeReady(number, this.now, minutes)
    }
    this.startWaiting(this.now, minutes)
    while (running.size > 0) {
      const now = Math.floor(running.least / scale)
      // Everything that ends in this minute ends before anything new starts: the nearest promise must not miss its bench.
      const nextMinute = (now + 1) * scale
      while (running.size > 0 && running.least < nextMinute) {
        const number = running.pop() - now * scale
        finish[number] = now
        const kind = kindOf[number]!
        if (kind !== NO_KIND) {
          this.free.add(kind, this.benchOf[number]!)
          this.touch(kind)
        }
        const end = firstSuccessor[number + 1]!
        for (let at = firstSuccessor[number]!; at < end; at += 1) {
          const successor = successors[at]!
          const left = waitingFor[successor]! - 1
          waitingFor[successor] = left
          if (left === 0) this.becomeReady(successor, now, minutes)
        }
      }
      this.startWaiting(now, minutes)
    }
  }

  private reset(): void {
    this.waitingFor.set(this.network.before)
    this.finish.fill(NEVER)
    this.hours.reset()
    this.free.reset()
    this.running.size = 0
    this.waiting.clear()
  }

  private becomeReady(number: number, now: number, minutes: Float64Array): void {
    const kind = this.network.kindOf[number]!
    if (kind === NO_KIND) {
      this.start[number] = now
      this.run(number, Math.ceil(now + minutes[number]!))
      return
    }
    this.waiting.add(kind, number)
    this.touch(kind)
  }

  private touch(kind: number): void {
    if (this.isTouched[kind] === 1) return
    this.isTouched[kind] = 1
    this.touched[this.touchedCount] = kind
    this.touchedCount += 1
  }

  private run(number: number, finish: number): void {
    this.running.push(finish * this.scale + number)
  }

  private startWaiting(now: number, minutes: Float64Array): void {
    const { touched, waiting, free, hours } = this
    for (let at = 0; at < this.touchedCount; at += 1) {
      const kind = touched[at]!
      this.isTouched[kind] = 0
      while (free.has(kind) && waiting.size(kind) > 0) {
        const number = waiting.takeLeast(kind)
        const bench = free.take(kind)
        const start = hours.startFrom(bench, now)
        const finish = hours.finishOf(bench, start, minutes[number]!)
        this.start[number] = start
        this.benchOf[number] = bench
        // A bench whose hours have run out never frees: what follows stays unfinished, and is reported so.
        if (finish !== NEVER) this.run(number, finish)
      }
    }
    this.touchedCount = 0
  }
}
