import type { BrowserContextOptions } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { axeInBothLights } from './support/axe.ts'
import { benchPages } from './support/bench-pages.ts'
import { benchTablet, benchToLookAt } from './support/bench-to-look-at.ts'
import { seen } from './support/browser.ts'
import { cutOff, smallTargets } from './support/in-page.mjs'
import { tabRound } from './support/keyboard.ts'
import { roomPages } from './support/room-pages.ts'

const screens = {
  phone: { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true },
  tablet: benchTablet,
} as const satisfies Record<string, BrowserContextOptions>

/** Smallest side of what a gloved finger touches, in CSS pixels. */
const touch = 48

const { shop, seatOf } = benchToLookAt()

describe.each(Object.entries(screens))('at the bench, on a %s', (screen, options) => {
  const seats = { machinist: seatOf(options, 'machinist'), second: seatOf(options, 'second'), nobody: seatOf(options, 'nobody') }

  it.each(benchPages)('$name: nothing found by axe-core, light or dark, nothing below 48 px, cut off or out of the keyboard’s reach', async ({ name, hands = 'machinist', open }) => {
    const { page } = seats[hands]()
    await seen(page, `${screen}: ${name}`, async () => {
      await open(page, shop())
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
      await open(page, shop())
      expect({ ...(await axeInBothLights(page)), cutOff: await page.evaluate(cutOff) }).toEqual({ light: [], dark: [], cutOff: [] })
    })
  })
})

describe('what is looked for', () => {
  const seat = seatOf(screens.tablet, 'nobody')

  it('is found on a page that is wrong in each of these ways', async () => {
    const { page } = seat()
    await page.setContent(`
      <style>a { display: block; width: 30px; outline: none } :focus-visible { outline: none }</style>
      <p style="color: #999; background: #aaa">Pale</p> <a href="#">Small</a> <div style="width: 1500px">Wide</div>`)
    const { light, dark } = await axeInBothLights(page)
    expect(light.join()).toContain('color-contrast')
    expect(dark.join()).toContain('color-contrast')
    expect(await page.evaluate(smallTargets, touch)).toHaveLength(1)
    expect(await page.evaluate(cutOff)).not.toEqual([])
    expect(await tabRound(page)).toEqual(['a “Small” does not show that it has the focus'])
  })
})
