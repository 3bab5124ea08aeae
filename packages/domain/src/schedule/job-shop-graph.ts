import { DomainError } from '../errors.ts'

/** The classical job shop: each job visits machines in its own order, one operation a machine at a time, no interruption. */
export interface JobShop {
  readonly machines: number
  readonly jobs: readonly (readonly { readonly machine: number; readonly duration: number }[])[]
}

/** A feasible schedule: start times job by job in operation order, and when the last operation ends. */
export interface JobShopSchedule {
  readonly makespan: number
  readonly starts: readonly (readonly number[])[]
}

/** Operations numbered through, with their neighbours in their job. */
export interface Graph {
  readonly count: number
  readonly duration: Int32Array
  readonly machine: Int32Array
  /** Previous and next operation of the same job; -1 at the ends. */
  readonly before: Int32Array
  readonly after: Int32Array
  readonly numberOf: readonly (readonly number[])[]
}

/** @throws DomainError `value-out-of-range` on a shop without operations or with a machine that does not exist */
export function graphOf(shop: JobShop): Graph {
  const flat = shop.jobs.flat()
  if (flat.length === 0) throw new DomainError('value-out-of-range', 'A shop without operations has no schedule.')
  for (const { machine, duration } of flat) {
    if (!Number.isInteger(machine) || machine < 0 || machine >= shop.machines || !(duration > 0)) {
      throw new DomainError('value-out-of-range', `Machine ${machine} for ${duration} does not exist in this shop.`)
    }
  }
  let next = 0
  const numberOf = shop.jobs.map((job) => job.map(() => next++))
  return {
    count: flat.length,
    duration: Int32Array.from(flat, ({ duration }) => duration),
    machine: Int32Array.from(flat, ({ machine }) => machine),
    before: Int32Array.from(numberOf.flatMap((job) => job.map((_, at) => job[at - 1] ?? -1))),
    after: Int32Array.from(numberOf.flatMap((job) => job.map((_, at) => job[at + 1] ?? -1))),
    numberOf,
  }
}

/** Machine orders by dispatch: of the operations that could start first, the one whose job has most work left. */
export function dispatchOrders(shop: JobShop, graph: Graph): number[][] {
  const orders: number[][] = Array.from({ length: shop.machines }, () => [])
  const machineFree = new Array<number>(shop.machines).fill(0)
  const jobs = shop.jobs.map((job, index) => ({
    job, numbers: graph.numberOf[index]!, next: 0, ready: 0, left: job.reduce((sum, { duration }) => sum + duration, 0),
  }))
  for (let placed = 0; placed < graph.count; placed += 1) {
    let choice = null
    let choiceStart = Number.POSITIVE_INFINITY
    for (const candidate of jobs) {
      const operation = candidate.job[candidate.next]
      if (operation === undefined) continue
      const start = Math.max(candidate.ready, machineFree[operation.machine]!)
      if (start < choiceStart || (start === choiceStart && choice !== null && candidate.left > choice.left)) {
        choice = candidate
        choiceStart = start
      }
    }
    const { machine, duration } = choice!.job[choice!.next]!
    orders[machine]!.push(choice!.numbers[choice!.next]!)
    machineFree[machine] = choice!.ready = choiceStart + duration
    choice!.left -= duration
    choice!.next += 1
  }
  return orders
}

export interface Times { readonly makespan: number; readonly start: Int32Array; readonly tail: Int32Array }

/** Earliest starts and longest tails under given machine orders; null when the orders wait for each other. */
export function timesOf(graph: Graph, orders: readonly (readonly number[])[]): Times | null {
  const { count, duration, before, after } = graph
  const machineBefore = new Int32Array(count).fill(-1)
  const machineAfter = new Int32Array(count).fill(-1)
  for (const order of orders) {
    for (let at = 1; at < order.length; at += 1) {
      machineBefore[order[at]!] = order[at - 1]!
      machineAfter[order[at - 1]!] = order[at]!
    }
  }
  const waiting = new Int8Array(count)
  const sequence = new Int32Array(count)
  let filled = 0
  for (let number = 0; number < count; number += 1) {
    waiting[number] = (before[number]! >= 0 ? 1 : 0) + (machineBefore[number]! >= 0 ? 1 : 0)
    if (waiting[number] === 0) sequence[filled++] = number
  }
  const start = new Int32Array(count)
  let makespan = 0
  for (let at = 0; at < filled; at += 1) {
    const number = sequence[at]!
    const finish = start[number]! + duration[number]!
    if (finish > makespan) makespan = finish
    for (const next of [after[number]!, machineAfter[number]!]) {
      if (next < 0) continue
      if (finish > start[next]!) start[next] = finish
      waiting[next]! -= 1
      if (waiting[next] === 0) sequence[filled++] = next
    }
  }
  if (filled < count) return null
  const tail = new Int32Array(count)
  for (let at = count - 1; at >= 0; at -= 1) {
    const number = sequence[at]!
    const tails = [after[number]!, machineAfter[number]!].map((next) => (next < 0 ? 0 : tail[next]!))
    tail[number] = duration[number]! + Math.max(...tails)
  }
  return { makespan, start, tail }
}
