import type { Browser, BrowserContextOptions } from 'playwright-core'
import { afterAll, beforeAll } from 'vitest'
import { loadPages } from '../../../apps/api/src/ground/pages.ts'
import type { Hands } from './bench-pages.ts'
import { startBenchShop, type BenchShop } from './bench-shop.ts'
import { openBrowser, signIn, takeSeat, type Seat } from './browser.ts'

export interface BenchToLookAt {
  shop(): BenchShop
  /** A seat for all tests of a screen: a person's, or nobody's. */
  seatOf(options: BrowserContextOptions, who: Hands | 'owner'): () => Seat
}

/** A tablet as it stands at a bench. */
export const benchTablet = { viewport: { width: 1024, height: 768 }, hasTouch: true } as const

/** The shop of the bench with its pages served, and a browser, for all tests of a file. */
export function benchToLookAt(): BenchToLookAt {
  let shop: BenchShop
  let browser: Browser
  let address: string

  beforeAll(async () => {
    [shop, browser] = await Promise.all([
      loadPages({ origin: undefined, overTls: false }).then((pages) => startBenchShop({ pages })), openBrowser(),
    ])
    address = shop.floor.address
  }, 240_000)
  afterAll(async () => {
    await browser.close()
    await shop.floor.stop()
  })

  function seatOf(options: BrowserContextOptions, who: Hands | 'owner'): () => Seat {
    let seat: Seat
    beforeAll(async () => {
      seat = await takeSeat(browser, address, { ...options, reducedMotion: 'reduce' })
      if (who !== 'nobody') await signIn(seat.page, shop.floor.people[who])
    })
    afterAll(() => seat.context.close())
    return () => seat
  }

  return { shop: () => shop, seatOf }
}
