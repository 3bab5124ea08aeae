import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { loadPages } from '../../apps/api/src/ground/pages.ts'
import { startFloor, workUpTo, type Floor } from '../support/floor.ts'
import { openJob, type OpenedJob } from '../support/shop.ts'
import { benchOf } from './support/bench.ts'
import { openBrowser, screens, scrollsSideways, seen, signIn, takeSeat } from './support/browser.ts'

let shop: Floor
let browser: Browser
let address: string
let job: OpenedJob

beforeAll(async () => {
  shop = await startFloor({ pages: await loadPages({ origin: undefined, overTls: false }) })
  address = shop.address
  browser = await openBrowser()
  job = await openJob(shop)
  await workUpTo(shop, job, 'hone-small-ends')
})
afterAll(async () => {
  await browser.close()
  await shop.stop()
})

describe('a shared tablet', () => {
  it('is registered at the desk, taken over in two touches, and handed back; wrong PINs show on the owner’s screen', async () => {
    const owner = await takeSeat(browser, address, screens.desktop)
    const tablet = await takeSeat(browser, address, screens.phone)
    await signIn(owner.page, shop.people.owner)
    const code = await seen(owner.page, 'the owner registers a tablet', () => registerTablet(owner.page))
    await seen(tablet.page, 'the code is typed on the tablet', () => typeCode(tablet.page, code))
    await owner.page.getByText('in nobody’s hands').waitFor()

    await seen(tablet.page, 'wrong PINs', () => lockSomebodyOut(tablet.page))
    await seen(owner.page, 'the owner is told without reloading, and unlocks', () => unlock(owner.page))

    await seen(tablet.page, 'taken over in two touches', () => takeOver(tablet.page, 'machinist'))
    await owner.page.getByText('in Ben Machinist’s hands').waitFor()
    await seen(tablet.page, 'a value is typed', () => measure(tablet.page))
    await seen(tablet.page, 'tags are scanned', () => scanTags(tablet.page))
    await seen(tablet.page, 'handed back', () => handBack(tablet.page))
    await owner.page.getByText('in nobody’s hands').waitFor()

    await seen(tablet.page, 'the next person finds the value', () => findValue(tablet.page))
    expect([...owner.complaints, ...tablet.complaints]).toEqual([])
    await Promise.all([owner, tablet].map(({ context }) => context.close()))
  })
})

async function registerTablet(page: Page): Promise<string> {
  await page.goto('/desk/devices')
  await page.getByText('No bench device yet').waitFor()
  await page.getByLabel('Name').fill('Pin hone tablet')
  await page.getByLabel('Bench').selectOption({ label: 'Bench: pin-hone' })
  await page.getByRole('button', { name: 'Get a code for a tablet' }).click()
  await page.getByRole('heading', { name: 'Code for Pin hone tablet' }).waitFor()
  await page.getByRole('img', { name: /opens the page on the tablet/ }).waitFor()
  return (await page.getByText(/^[2-9A-Z]{5}-[2-9A-Z]{5}$/).textContent()) ?? ''
}

async function typeCode(page: Page, code: string): Promise<void> {
  await page.goto('/bench')
  await page.getByRole('heading', { name: 'Sign in' }).waitFor()
  await page.goto('/device')
  await page.getByLabel('Code').fill(code.toLowerCase())
  await page.getByRole('button', { name: 'This is the tablet' }).click()
  await page.getByRole('heading', { name: 'Bench: pin-hone: who works here?' }).waitFor()
  // The bench's queue stands beneath, and nobody is offered who does not work at a bench.
  await page.getByRole('link', { name: new RegExp(`${job.number}.*Bush and hone small ends`) }).waitFor()
  expect(await page.getByRole('button', { name: 'Ada Counter' }).count()).toBe(0)
  expect(await scrollsSideways(page)).toBe(false)
  // Instead of the sign-in the tablet asks who works here.
  await page.goto('/sign-in?next=/bench')
  await page.getByRole('heading', { name: 'Bench: pin-hone: who works here?' }).waitFor()
}

async function lockSomebodyOut(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Cleo Machinist' }).click()
  for (const left of ['4 more tries', '3 more tries', '2 more tries', 'One more try', 'Too many wrong PINs']) {
    await benchOf(page).pin('Cleo Machinist', '000000')
    await page.getByText(left).waitFor()
  }
}

async function unlock(page: Page): Promise<void> {
  const notice = page.getByRole('alert').filter({ hasText: 'PIN locked after five wrong ones' })
  await notice.getByText(/Cleo Machinist\s+on Pin hone tablet/).waitFor()
  await notice.getByRole('button', { name: 'Unlock Cleo Machinist' }).click()
  await notice.waitFor({ state: 'detached' })
}

async function takeOver(page: Page, who: 'machinist' | 'second'): Promise<void> {
  const { name, pin } = shop.people[who]
  await page.getByRole('button', { name }).click()
  // The pad has the focus: the PIN may be typed on a keyboard as well.
  await page.getByRole('group', { name: `PIN of ${name}` }).and(page.locator(':focus')).waitFor()
  await page.keyboard.type(pin)
  await page.getByRole('button', { name: 'Hand back' }).waitFor()
}

async function measure(page: Page): Promise<void> {
  const hands = benchOf(page)
  await page.goto(`/bench/jobs/${job.number}/hone-small-ends`)
  await page.getByRole('heading', { name: 'Bush and hone small ends to their own pins' }).waitFor()
  await hands.chooseGauge('Pin-fit gauge')
  await hands.setOnMate(true)
  await hands.goTo('Rod 1 small end, front, along rod')
  await hands.type(['0.0007'])
  await page.getByText('Work runs').waitFor()
}

/** A scanner types the code and Enter as fast as it can. */
async function scan(page: Page, text: string): Promise<void> {
  await page.keyboard.type(text)
  await page.keyboard.press('Enter')
}

async function scanTags(page: Page): Promise<void> {
  const cell = page.getByRole('textbox', { name: 'Rod 1 small end, front, across rod', exact: true })
  // In a cell: the tag is no value, and what stood there stands there still.
  await benchOf(page).goTo('Rod 1 small end, front, across rod')
  await scan(page, `${address}/jobs/${job.number}/parts/R999`)
  await page.getByRole('alert').filter({ hasText: `Job ${job.number} has no part R999` }).waitFor()
  expect(await cell.inputValue()).toBe('')

  await page.goto('/bench')
  await page.getByRole('link', { name: /Bench: pin-hone.*This device’s own bench/ }).click()
  await page.getByRole('heading', { name: 'Bench: pin-hone' }).waitFor()
  await scan(page, '4006381333931')
  await page.getByText('“4006381333931” is no tag of this shop').waitFor()
  await scan(page, `https://other.example/jobs/${job.number}`)
  await page.getByText('This tag was printed at other.example, not here').waitFor()
  await scan(page, `${address}/jobs/${job.number}/parts/R2`)
  await page.getByRole('heading', { name: 'Bush and hone small ends to their own pins' }).waitFor()
}

async function handBack(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Hand back' }).click()
  await page.getByRole('heading', { name: 'Bench: pin-hone: who works here?' }).waitFor()
  // Nobody is signed in: what needs a person leads back here.
  await page.goto('/counter')
  await page.getByRole('heading', { name: 'Bench: pin-hone: who works here?' }).waitFor()
  await page.goto('/take-over')
}

async function findValue(page: Page): Promise<void> {
  await page.getByRole('link', { name: new RegExp(`${job.number}.*Bush and hone small ends`) }).click()
  await takeOver(page, 'second')
  await page.getByRole('heading', { name: 'Bush and hone small ends to their own pins' }).waitFor()
  await page.getByText('Work rests').waitFor()
  expect(await page.getByRole('textbox', { name: 'Rod 1 small end, front, along rod', exact: true }).inputValue()).toBe('0.0007')
}
