import { mkdir, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import type { BrowserContextOptions, Page } from 'playwright-core'
import { beforeAll, describe, expect, it } from 'vitest'
import { benchPages, pictureOf } from './support/bench-pages.ts'
import { benchTablet, benchToLookAt } from './support/bench-to-look-at.ts'
import { screens, seen } from './support/browser.ts'

/** Takes a picture of every page of the bench in each of its states, on a phone and a tablet, light and dark, for docs/bench.md. */
const folder = path.join(import.meta.dirname, '../../docs/pictures/bench')
const devices = { phone: screens.phone, tablet: benchTablet } as const satisfies Record<string, BrowserContextOptions>
/** Of WebP, in hundredths: small, and text stays sharp. */
const quality = 55

const { shop, seatOf } = benchToLookAt()
beforeAll(async () => {
  await rm(folder, { recursive: true, force: true })
  await mkdir(folder, { recursive: true })
})

describe.each(Object.entries(devices))('on a %s', (device, options) => {
  const seats = { machinist: seatOf(options, 'machinist'), second: seatOf(options, 'second'), nobody: seatOf(options, 'nobody') }

  it.each(benchPages)('$name', async ({ name, hands = 'machinist', open }) => {
    const { page } = seats[hands]()
    await seen(page, `${device}: ${name}`, async () => {
      await page.emulateMedia({ colorScheme: 'light' })
      await open(page, shop())
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
