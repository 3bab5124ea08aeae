import type { Browser, BrowserContextOptions } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { loadPages } from '../../apps/api/src/ground/pages.ts'
import { axeInBothLights } from './support/axe.ts'
import { benchPages, type Hands } from './support/bench-pages.ts'
import { startBenchShop, type BenchShop } from './support/bench-shop.ts'
import { openBrowser, seen, signIn, takeSeat, type Seat } from './support/browser.ts'
import { cutOff, smallTargets } from './support/in-page.mjs'
import { tabRound } from './support/keyboard.ts'
import { roomPages } from './support/room-pages.ts'

const screens = {
  phone: { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true },
  tablet: { viewport: { width: 1024, height: 768 }, hasTouch: true },
} as const satisfies Record<string, BrowserContextOptions>

/** Smallest side of what a gloved finger touches, in CSS pixels. */
const touch = 48

let shop: BenchShop
let browser: Browser
let address: string

beforeAll(async () => {
  [shop, browser] = await Promise.all([
    loadPages({ origin: undefined, overTls: false }).then((pages) => startBenchShop({ pages })), openBrowser(),
  ])
  const listening = shop.floor.app.server.address()
  address = `http://127.0.0.1:${typeof listening === 'object' && listening !== null ? listening.port : 0}`
})
afterAll(async () => {
  await browser.close()
  await shop.floor.stop()
})

/** A seat for all tests of a screen: a person's, or nobody's. */
function seatOf(options: BrowserContextOptions, who: Hands | 'owner'): () => Seat {
  let seat: Seat
  beforeAll(async () => {
    seat = await takeSeat(browser, address, { ...options, reducedMotion: 'reduce' })
    if (who !== 'nobody') await signIn(seat.page, shop.floor.people[who])
  })
  afterAll(() => seat.context.close())
  return () => seat
}

describe.each(Object.entries(screens))('at the bench, on a %s', (screen, options) => {
  const seats = { machinist: seatOf(options, 'machinist'), second: seatOf(options, 'second'), nobody: seatOf(options, 'nobody') }

  it.each(benchPages)('$name: nothing found by axe-core, light or dark, nothing below 48 px, cut off or out of the keyboard’s reach', async ({ name, hands = 'machinist', open }) => {
    const { page } = seats[hands]()
    await seen(page, `${screen}: ${name}`, async () => {
      await open(page, shop)
      const found = {
        ...(await axeInBothLights(page)),
        small: await page.evaluate(smallTargets, touch),
        cutOff: await page.evaluate(cutOff),
        byKeyboard: await tabRound(page),
      }
      expect(found).toEqual({ light: [], dark: [], small: [], cutOff: [], byKeyboard: [] })
    })
  })
})

describe.each(Object.entries(screens))('in the other rooms, on a %s', (screen, options) => {
  const seat = seatOf(options, 'owner')

  it.each(roomPages)('$name: nothing found by axe-core, light or dark, and nothing cut off', async ({ name, open }) => {
    const { page } = seat()
    await seen(page, `${screen}: ${name}`, async () => {
      await open(page, shop)
      expect({ ...(await axeInBothLights(page)), cutOff: await page.evaluate(cutOff) }).toEqual({ light: [], dark: [], cutOff: [] })
    })
  })
})

it('a page that is wrong in each of these ways is found', async () => {
  const { page, context } = await takeSeat(browser, address, screens.tablet)
  await page.setContent(`
    <style>a { display: block; width: 30px; outline: none } :focus-visible { outline: none }</style>
    <p style="color: #999; background: #aaa">Pale</p> <a href="#">Small</a> <div style="width: 1500px">Wide</div>`)
  const { light, dark } = await axeInBothLights(page)
  expect(light.join()).toContain('color-contrast')
  expect(dark.join()).toContain('color-contrast')
  expect(await page.evaluate(smallTargets, touch)).toHaveLength(1)
  expect(await page.evaluate(cutOff)).not.toEqual([])
  expect(await tabRound(page)).toEqual(['a “Small” does not show that it has the focus'])
  await context.close()
})
