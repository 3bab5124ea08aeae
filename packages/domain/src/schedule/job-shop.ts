import { dispatchOrders, graphOf, timesOf } from './job-shop-graph.ts'
import type { Graph, JobShop, JobShopSchedule, Times } from './job-shop-graph.ts'

/**
 * A short schedule by tabu search over swaps on a longest path: the two neighbours at either end of a block of operations
 * that one machine does back to back on the longest path are the only swaps that can shorten it. Starts from the
 * most-work-remaining dispatch and shakes the best order when it is stuck.
 * @param random uniform numbers from 0 up to but not including 1
 * @param moves how many swaps are tried at most; the search ends earlier when the lower bound (the busiest machine or the
 * longest job) is reached, which proves the optimum
 * @throws DomainError `value-out-of-range` on a shop without operations or with a machine that does not exist
 * @formula job-shop
 */
export function shortenJobShop(shop: JobShop, moves: number, random: () => number): JobShopSchedule {
  const graph = graphOf(shop)
  const bound = lowerBound(shop)
  let orders = dispatchOrders(shop, graph)
  let best = timesOf(graph, orders)!
  let bestOrders = orders.map((order) => order.slice())
  const tabuUntil = new Map<number, number>()
  let stuckSince = 0
  for (let move = 1; move <= moves && best.makespan > bound; move += 1) {
    const current = timesOf(graph, orders)!
    let chosen: { machine: number; at: number; makespan: number } | null = null
    for (const { machine, at } of swapsOnLongestPath(graph, orders, current)) {
      const order = orders[machine]!
      swap(order, at)
      const times = timesOf(graph, orders)
      const isTabu = (tabuUntil.get(order[at]! * graph.count + order[at + 1]!) ?? 0) >= move
      swap(order, at)
      if (times === null || (isTabu && times.makespan >= best.makespan)) continue
      if (chosen === null || times.makespan < chosen.makespan) chosen = { machine, at, makespan: times.makespan }
    }
    if (chosen !== null) {
      const order = orders[chosen.machine]!
      // The order just left may not come back for a while.
      tabuUntil.set(order[chosen.at]! * graph.count + order[chosen.at + 1]!, move + 8 + Math.floor(random() * 8))
      swap(order, chosen.at)
      if (chosen.makespan < best.makespan) {
        best = timesOf(graph, orders)!
        bestOrders = orders.map((own) => own.slice())
        stuckSince = move
      }
    }
    if (chosen === null || move - stuckSince > 400) {
      orders = shaken(graph, bestOrders, random)
      tabuUntil.clear()
      stuckSince = move
    }
  }
  return { makespan: best.makespan, starts: graph.numberOf.map((job) => job.map((number) => best.start[number]!)) }
}

/**
 * No schedule is shorter than the busiest machine or the longest job.
 * @formula job-shop
 */
export function lowerBound(shop: JobShop): number {
  const load = new Array<number>(shop.machines).fill(0)
  let longest = 0
  for (const job of shop.jobs) {
    longest = Math.max(longest, job.reduce((sum, { duration }) => sum + duration, 0))
    for (const { machine, duration } of job) load[machine]! += duration
  }
  return Math.max(longest, ...load)
}

/** Neighbours on a machine, both on a longest path and back to back, at the first or last end of their block. */
function swapsOnLongestPath(graph: Graph, orders: readonly (readonly number[])[], times: Times): { machine: number; at: number }[] {
  const isCritical = (number: number): boolean => times.start[number]! + times.tail[number]! === times.makespan
  const swaps: { machine: number; at: number }[] = []
  orders.forEach((order, machine) => {
    let blockStart = 0
    for (let at = 0; at < order.length; at += 1) {
      const next = order[at + 1]
      const goesOn = next !== undefined && isCritical(order[at]!) && isCritical(next)
        && times.start[order[at]!]! + graph.duration[order[at]!]! === times.start[next]!
      if (goesOn) continue
      if (at > blockStart) {
        swaps.push({ machine, at: blockStart })
        if (at - 1 > blockStart) swaps.push({ machine, at: at - 1 })
      }
      blockStart = at + 1
    }
  })
  return swaps
}

function swap(order: number[], at: number): void {
  const first = order[at]!
  order[at] = order[at + 1]!
  order[at + 1] = first
}

/** The best orders with some swaps on their longest path, so that the search leaves the valley it is in. */
function shaken(graph: Graph, orders: readonly (readonly number[])[], random: () => number): number[][] {
  const result = orders.map((order) => order.slice())
  for (let time = 0; time < 10; time += 1) {
    const swaps = swapsOnLongestPath(graph, result, timesOf(graph, result)!)
    const choice = swaps[Math.floor(random() * swaps.length)]
    if (choice === undefined) break
    swap(result[choice.machine]!, choice.at)
    if (timesOf(graph, result) === null) swap(result[choice.machine]!, choice.at)
  }
  return result
}
