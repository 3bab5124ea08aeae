import { mkdir, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { loadPages } from '../../apps/api/src/ground/pages.ts'
import { benchPages, pictureOf, type Hands } from './support/bench-pages.ts'
import { startBenchShop, type BenchShop } from './support/bench-shop.ts'
import { openBrowser, screens, seen, signIn, takeSeat, type Seat } from './support/browser.ts'

/** Takes a picture of every page of the bench in each of its states, on a phone and a tablet, light and dark, for docs/bench.md. */
const folder = path.join(import.meta.dirname, '../../docs/pictures/bench')
const devices = {
  phone: screens.phone,
  tablet: { viewport: { width: 1024, height: 768 }, hasTouch: true },
} as const satisfies Record<string, BrowserContextOptions>
/** Of WebP, in hundredths: small, and text stays sharp. */
const quality = 55

let shop: BenchShop
let browser: Browser
let address: string

beforeAll(async () => {
  [shop, browser] = await Promise.all([
    loadPages({ origin: undefined, overTls: false }).then((pages) => startBenchShop({ pages })), openBrowser(),
  ])
  const listening = shop.floor.app.server.address()
  address = `http://127.0.0.1:${typeof listening === 'object' && listening !== null ? listening.port : 0}`
  await rm(folder, { recursive: true, force: true })
  await mkdir(folder, { recursive: true })
}, 240_000)
afterAll(async () => {
  await browser.close()
  await shop.floor.stop()
})

describe.each(Object.entries(devices))('on a %s', (device, options) => {
  const seats = new Map<Hands, Seat>()
  beforeAll(async () => {
    for (const hands of ['machinist', 'second', 'nobody'] as const) {
      const seat = await takeSeat(browser, address, { ...options, reducedMotion: 'reduce' })
      if (hands !== 'nobody') await signIn(seat.page, shop.floor.people[hands])
      seats.set(hands, seat)
    }
  })
  afterAll(async () => {
    for (const { context } of seats.values()) await context.close()
  })

  it.each(benchPages)('$name', async ({ name, hands = 'machinist', open }) => {
    const { page } = seats.get(hands)!
    await seen(page, `${device}: ${name}`, async () => {
      await page.emulateMedia({ colorScheme: 'light' })
      await open(page, shop)
      for (const light of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme: light })
        const bytes = await take(page)
        expect(bytes.subarray(8, 12).toString()).toBe('WEBP')
        await writeFile(path.join(folder, pictureOf(name, device, light)), bytes)
      }
    })
  })
})

async function take(page: Page): Promise<Buffer> {
  const session = await page.context().newCDPSession(page)
  const { data } = await session.send('Page.captureScreenshot', { format: 'webp', quality })
  await session.detach()
  return Buffer.from(data, 'base64')
}
