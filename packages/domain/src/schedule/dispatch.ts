import { NO_KIND } from './network.ts'
import type { Network } from './network.ts'
import { NumberHeap } from './number-heap.ts'
import { NumberSet } from './number-set.ts'
import type { ScheduleInput } from './schedule-types.ts'

/** Finish of an operation that the working hours given do not reach. */
export const NEVER = Number.POSITIVE_INFINITY

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
  private readonly queues: readonly NumberSet[]
  /** Free benches of each kind as a stack, and how many are on it: an array that shrinks and grows would be allocated anew. */
  private readonly freeBenches: readonly Int32Array[]
  private readonly freeCount: Int32Array
  /** Finish times of what runs, each a power of two times the time plus the operation's number: one number orders both. */
  private readonly running: NumberHeap
  private readonly scale: number
  private readonly opens: readonly Float64Array[]
  private readonly closes: readonly Float64Array[]
  /** The shift each bench has come to: a bench's time only moves forward. */
  private readonly shift: Int32Array
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
    this.queues = network.kinds.map(() => new NumberSet(count))
    this.freeBenches = network.benchesOfKind.map((benches) => new Int32Array(benches.length))
    this.freeCount = new Int32Array(network.kinds.length)
    this.running = new NumberHeap(count + 1)
    this.scale = 2 ** Math.ceil(Math.log2(count + 1))
    // Benches mostly keep the same hours: one copy of these stays near the processor.
    const hours = [...new Set(input.benches.map((bench) => bench.hours))]
    const opens = new Map(hours.map((own) => [own, Float64Array.from(own.intervals, ([from]) => from)]))
    const closes = new Map(hours.map((own) => [own, Float64Array.from(own.intervals, ([, to]) => to)]))
    this.opens = input.benches.map((bench) => opens.get(bench.hours)!)
    this.closes = input.benches.map((bench) => closes.get(bench.hours)!)
    this.shift = new Int32Array(input.benches.length)
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
          this.free(kind, this.benchOf[number]!)
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
    this.shift.fill(0)
    this.running.size = 0
    for (const queue of this.queues) queue.clear()
    this.network.benchesOfKind.forEach((benches, kind) => {
      this.freeCount[kind] = 0
      for (let at = benches.length - 1; at >= 0; at -= 1) this.free(kind, benches[at]!)
    })
  }

  private becomeReady(number: number, now: number, minutes: Float64Array): void {
    const kind = this.network.kindOf[number]!
    if (kind === NO_KIND) {
      this.start[number] = now
      this.run(number, Math.ceil(now + minutes[number]!))
      return
    }
    this.queues[kind]!.add(number)
    this.touch(kind)
  }

  private touch(kind: number): void {
    if (this.isTouched[kind] === 1) return
    this.isTouched[kind] = 1
    this.touched[this.touchedCount] = kind
    this.touchedCount += 1
  }

  private free(kind: number, bench: number): void {
    const count = this.freeCount[kind]!
    this.freeBenches[kind]![count] = bench
    this.freeCount[kind] = count + 1
  }

  private run(number: number, finish: number): void {
    this.running.push(finish * this.scale + number)
  }

  private startWaiting(now: number, minutes: Float64Array): void {
    const { touched } = this
    for (let at = 0; at < this.touchedCount; at += 1) {
      const kind = touched[at]!
      this.isTouched[kind] = 0
      const queue = this.queues[kind]!
      const free = this.freeBenches[kind]!
      let count = this.freeCount[kind]!
      while (queue.size > 0 && count > 0) {
        const number = queue.takeLeast()
        count -= 1
        const bench = free[count]!
        const finish = this.work(bench, number, now, minutes[number]!)
        this.benchOf[number] = bench
        // A bench whose hours have run out never frees: what follows stays unfinished, and is reported so.
        if (finish !== NEVER) this.run(number, finish)
      }
      this.freeCount[kind] = count
    }
    this.touchedCount = 0
  }

  /** Books `minutes` of a bench's open hours from `now` on. */
  private work(bench: number, number: number, now: number, minutes: number): number {
    const opens = this.opens[bench]!
    const closes = this.closes[bench]!
    const shifts = opens.length
    let shift = this.shift[bench]!
    while (shift < shifts && closes[shift]! <= now) shift += 1
    let time = shift < shifts ? Math.max(now, opens[shift]!) : NEVER
    this.start[number] = time
    let left = minutes
    while (shift < shifts && left > closes[shift]! - time) {
      left -= closes[shift]! - time
      shift += 1
      time = shift < shifts ? opens[shift]! : NEVER
    }
    this.shift[bench] = shift
    return shift < shifts ? Math.ceil(time + left) : NEVER
  }
}
