import { parentPort } from 'node:worker_threads'
import { promiseCounts, type ScheduleInput } from '../src/index.ts'
import { shopOf } from './shop.ts'
import { generator } from './timing.ts'

/** What a thread is asked: to build its shop, or to play its share of the futures. */
export type Order =
  | { readonly kind: 'build'; readonly jobs: number }
  | { readonly kind: 'play'; readonly futures: number; readonly seed: number }

let shop: ScheduleInput | null = null

parentPort?.on('message', (order: Order) => {
  if (order.kind === 'build') shop = shopOf(order.jobs)
  else if (shop !== null) parentPort?.postMessage(promiseCounts(shop, order.futures, generator(order.seed)))
})
