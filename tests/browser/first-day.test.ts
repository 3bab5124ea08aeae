import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { addDays } from '../../prisma/demo/days.ts'
import type { OpenedJob } from '../../prisma/demo/opening.ts'
import { people } from '../../prisma/demo/people.ts'
import { openBrowser, screens, seen, takeSeat, type Seat } from './support/browser.ts'
import { startEmptyShop, type EmptyShop } from './support/empty-shop.ts'
import { hasFocus, tabTo } from './support/keyboard.ts'
import { workUpToSmallEnds } from './support/unboosted-job.ts'

const today = new Date().toISOString().slice(0, 10)
const { odile: owner, sunniva: machinist } = people

let shop: EmptyShop
let browser: Browser

beforeAll(async () => {
  [shop, browser] = await Promise.all([startEmptyShop(), openBrowser()])
})
afterAll(async () => {
  await browser.close()
  await shop.stop()
})

it('an owner opens an empty shop with its one-time link, and whoever is added at the desk can work', async () => {
  const seat = await takeSeat(browser, shop.address, screens.phone)
  await seen(seat.page, 'the owner sets the shop up', () => setUp(seat.page))
  await seen(seat.page, 'the owner adds a person', () => addMachinist(seat.page))
  await seen(seat.page, 'the owner adds a gauge', () => addPinFitGauge(seat.page))
  const late = await takeSeat(browser, shop.address, screens.phone)
  await seen(late.page, 'the link is used again', () => useLinkAgain(late.page))
  await leave(seat, late)
})

it('a machinist does a whole step with the keyboard alone: a value, Enter, the next cell, and a PIN at the end', async () => {
  const { job, floor } = await workUpToSmallEnds(shop.address, today)
  const seat = await takeSeat(browser, shop.address, screens.desktop)
  await seen(seat.page, 'sign-in by keyboard', () => signInByKeyboard(seat.page))
  await seen(seat.page, 'to the step by keyboard', () => openStepByKeyboard(seat.page, job))
  await seen(seat.page, 'readings by keyboard', () => measureByKeyboard(seat.page))
  await seen(seat.page, 'signature by keyboard', () => signByKeyboard(seat.page))
  expect((await floor.readStep('hone-small-ends')).state).toBe('signed')
  await leave(seat)
})

async function leave(...seats: readonly Seat[]): Promise<void> {
  for (const { complaints, context } of seats) {
    expect(complaints).toEqual([])
    await context.close()
  }
}

async function setUp(page: Page): Promise<void> {
  await page.goto(shop.setupLink)
  await page.getByLabel('Name of the shop').fill('Quarry Lane Engines')
  await page.getByLabel('Time zone').selectOption('UTC')
  await page.getByLabel('Inches').check()
  await page.getByLabel('Your name').fill(owner.name)
  await page.getByLabel('Sign-in name').fill(owner.signInName)
  await page.getByLabel('Password').fill(owner.password)
  await page.getByLabel('PIN').fill(owner.pin)
  await page.getByRole('button', { name: 'Open the shop' }).click()
  await page.getByRole('heading', { name: 'Owner’s desk' }).waitFor()
  await page.getByText('Quarry Lane Engines').waitFor()
}

async function addMachinist(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'People' }).click()
  await page.getByLabel('Name', { exact: true }).fill(machinist.name)
  await page.getByLabel('Sign-in name').fill(machinist.signInName)
  await page.getByLabel('First password').fill(machinist.password)
  await page.getByLabel('PIN').fill(machinist.pin)
  await page.getByLabel('Machinist').check()
  await page.getByRole('button', { name: 'Add the person' }).click()
  await page.getByText(`${machinist.name} can sign in now.`).waitFor()
}

async function addPinFitGauge(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Gauges' }).click()
  await page.getByLabel('Mark').fill('QL7')
  await page.getByLabel('Name', { exact: true }).fill('Pin-fit gauge')
  await page.getByLabel('Reads to, in').fill('0.0001')
  await page.getByLabel('Standard uncertainty u, in').fill('0.000025')
  await page.getByLabel('Calibrated until').fill(addDays(today, 200))
  await page.getByLabel('Analogue dial').check()
  await page.getByRole('button', { name: 'Add the gauge' }).click()
  await page.getByText('QL7 can be used at the bench now.').waitFor()
}

async function useLinkAgain(page: Page): Promise<void> {
  await page.goto(shop.setupLink)
  await page.getByLabel('Name of the shop').fill('Somebody else’s')
  await page.getByLabel('Your name').fill('Somebody')
  await page.getByLabel('Sign-in name').fill('somebody')
  await page.getByLabel('Password').fill('long enough a word')
  await page.getByLabel('PIN').fill('111222')
  await page.getByRole('button', { name: 'Open the shop' }).click()
  await page.getByRole('alert').waitFor()
  expect(new URL(page.url()).pathname).toBe('/setup')
}

async function signInByKeyboard(page: Page): Promise<void> {
  await page.goto('/sign-in')
  await tabTo(page, page.getByLabel('Sign-in name'))
  await page.keyboard.type(machinist.signInName)
  await page.keyboard.press('Tab')
  await page.keyboard.type(machinist.password)
  await page.keyboard.press('Enter')
  await page.getByRole('heading', { name: 'Which bench?' }).waitFor()
}

async function openStepByKeyboard(page: Page, { number }: OpenedJob): Promise<void> {
  await tabTo(page, page.getByRole('link', { name: /Pin hone/ }))
  await page.keyboard.press('Enter')
  await tabTo(page, page.getByRole('link', { name: new RegExp(`Job ${number}.*Bush and hone small ends`) }))
  await page.keyboard.press('Enter')
  await tabTo(page, page.getByLabel('Gauge in hand'))
  // A closed list goes to the entry whose first letters are typed.
  await page.keyboard.type('QL7')
  await page.getByText(/U = 0\.00005 in \(k = 2\)/).waitFor()
  await tabTo(page, page.getByRole('switch', { name: /set on the mating part/ }))
  await page.keyboard.press('Space')
}

async function measureByKeyboard(page: Page): Promise<void> {
  const cells = page.getByRole('grid').getByRole('textbox')
  expect(await cells.count()).toBe(32)
  await tabTo(page, page.getByRole('textbox', { name: 'Rod 1 small end, front, along rod' }))
  await page.keyboard.type('four tenths')
  await page.keyboard.press('Enter')
  await page.getByRole('alert').filter({ hasText: 'Rod 1 small end' }).waitFor()
  expect(await page.getByRole('textbox', { name: 'Rod 1 small end, front, along rod' }).inputValue()).toBe('four tenths')
  await page.keyboard.press('Escape')
  for (let count = 0; count < 32; count += 1) {
    // A hand takes longer than a gauge that sends its figure twice, which is asked about.
    if (count > 0) await page.waitForTimeout(200)
    await page.keyboard.type('0.0004')
    await page.keyboard.press('Enter')
    if (count === 0) {
      // The hand has gone on by itself, and the cell before is stored.
      expect(await hasFocus(page.getByRole('textbox', { name: 'Rod 1 small end, front, along rod' }))).toBe(false)
      expect(await page.getByRole('grid').locator(':focus').inputValue()).toBe('')
    }
  }
  expect(new Set(await cells.evaluateAll((all) => all.map((one) => (one as { value?: string }).value)))).toEqual(new Set(['0.0004']))
  const verdicts = page.getByRole('region', { name: 'Verdicts' })
  await verdicts.getByText(/8\s*within/).first().waitFor()
  expect(await verdicts.getByText('outside').count()).toBe(0)
}

async function signByKeyboard(page: Page): Promise<void> {
  await tabTo(page, page.getByRole('button', { name: 'All seen' }))
  await page.keyboard.press('Enter')
  const pad = page.getByRole('group', { name: `PIN of ${machinist.name}` })
  await tabTo(page, pad)
  await page.keyboard.type(machinist.pin)
  const sign = page.getByRole('button', { name: /^Sign “Bush and hone small ends/ })
  await tabTo(page, sign)
  await page.keyboard.press('Enter')
  await page.getByText(new RegExp(`${machinist.name}.*signed on`)).waitFor()
}
