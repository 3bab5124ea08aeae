import { randomUUID } from 'node:crypto'
import type { Page } from 'playwright-core'
import { drawCode } from '../../support/bench-device.ts'
import type { TestJob } from '../../support/floor.ts'
import { key } from '../../support/shop.ts'
import { benchOf, unfold } from './bench.ts'
import type { BenchShop } from './bench-shop.ts'
import { untilOpensWithout } from './tablet.ts'

/** In whose hands the browser is: of somebody who is signed in, or of nobody. */
export type Hands = 'machinist' | 'second' | 'nobody'

/** One page of the bench in one of its states. */
export interface BenchPage {
  readonly name: string
  /** The machinist's, unless it says otherwise. */
  readonly hands?: Hands
  /** Opens it for whoever has the browser in hand, and waits until it is there. */
  readonly open: (page: Page, shop: BenchShop) => Promise<void>
}

const firstCell = 'Rod 1 small end, front, along rod'

/**
 * Every page of the bench in each of its states. Whoever adds a page or a state adds its line here, and it is held to
 * what all others are held to.
 */
export const benchPages: readonly BenchPage[] = [
  { name: 'which bench', open: (page) => openAt(page, '/bench', 'Which bench?') },
  { name: 'queue', open: (page, { floor }) => openAt(page, `/bench/${floor.benches['pin-hone']}`, 'Bench: pin-hone') },
  { name: 'empty queue', open: (page, { floor }) => openAt(page, `/bench/${floor.benches['align-hone']}`, 'Bench: align-hone') },
  { name: 'step not begun', open: (page, { forTwo }) => openStep(page, forTwo, 'polish-crank') },
  { name: 'step that waits for others', open: (page, { atWork: job }) => openStep(page, job, 'rod-bearings') },
  { name: 'step being measured', open: atWork },
  { name: 'step being measured, shown the other way', open: shownOtherWay },
  { name: 'text that is no value', open: typeNoValue },
  { name: 'slip being corrected', open: correctSlip },
  { name: 'why of a limit', open: openWhy },
  { name: 'asking the owner', open: askOwner },
  { name: 'step ready to sign', open: (page, { ready }) => openStep(page, ready, 'fit-pins') },
  { name: 'PIN that is wrong', open: typeWrongPin },
  { name: 'step that two sign', open: (page, { forTwo }) => openStep(page, forTwo, 'bore') },
  { name: 'signed step', open: (page, { atWork: job }) => openStep(page, job, 'hone-bores') },
  { name: 'step open again', open: (page, { atWork: job }) => openStep(page, job, 'measure-rods') },
  { name: 'own menu', open: openMenu },
  { name: 'finding by hand', open: raiseFinding },
  { name: 'tag of no part', open: scanStrangeTag },
  { name: 'crack test with results', open: (page, { cracked }) => openStep(page, cracked, 'crack-test') },
  { name: 'weights and bobweights', open: openBalance },
  { name: 'soak asked for', open: (page, { soaking }) => openStep(page, soaking, 'measure-block') },
  { name: 'ring gaps on the clock, and lots', open: (page, { clocked }) => openStep(page, clocked, 'install-pistons') },
  { name: 'trial fit', open: openTrialFit },
  { name: 'to confirm and to sign again', hands: 'second', open: (page) => openAt(page, '/to-confirm', /Sign again: 1/) },
  { name: 'nothing kept on this device', open: (page) => openAt(page, '/bench/outbox', 'Kept on this device') },
  { name: 'work without a network', open: workOffline },
  { name: 'kept on this device', open: openKept },
  { name: 'becoming a bench device', hands: 'nobody', open: (page) => openAt(page, '/device', 'Make this a bench device') },
  { name: 'code of no device', hands: 'nobody', open: typeNoCode },
  { name: 'who works here', hands: 'nobody', open: openTakeOver },
  { name: 'PIN of whoever works here', hands: 'nobody', open: chooseWhoWorks },
]

async function openAt(page: Page, path: string, heading: string | RegExp): Promise<void> {
  await page.context().setOffline(false)
  await page.goto(path)
  await page.getByRole('heading', { name: heading }).waitFor()
  await settled(page)
}

async function openStep(page: Page, { number }: TestJob, key: string): Promise<void> {
  await page.context().setOffline(false)
  await page.goto(`/bench/jobs/${number}/${key}`)
  await page.getByRole('heading', { name: /^Sign$/ }).waitFor()
  await settled(page)
}

/** All that the page asked for has arrived, a list of people among it. */
async function settled(page: Page): Promise<void> {
  await page.getByText('Reading…').waitFor({ state: 'detached' })
  await page.waitForLoadState('load')
}

function atWork(page: Page, { atWork: job }: BenchShop): Promise<void> {
  return openStep(page, job, 'hone-small-ends')
}

async function shownOtherWay(page: Page, shop: BenchShop): Promise<void> {
  await atWork(page, shop)
  await unfold(page)
  await page.getByRole('button', { name: /^(All in a table|One at a time)$/ }).click()
}

async function typeNoValue(page: Page, shop: BenchShop): Promise<void> {
  await atWork(page, shop)
  await benchOf(page).goTo('Rod 4 small end, front, along rod')
  await benchOf(page).type(['four tenths'])
  await page.getByRole('alert').waitFor()
}

async function correctSlip(page: Page, shop: BenchShop): Promise<void> {
  await atWork(page, shop)
  await benchOf(page).goTo(firstCell)
  await page.getByRole('button', { name: 'Correct a slip' }).click()
  await page.getByLabel('Why was the former value false?').waitFor()
}

async function openWhy(page: Page, shop: BenchShop): Promise<void> {
  await atWork(page, shop)
  await benchOf(page).goTo(firstCell)
  await page.getByText('Why?', { exact: true }).first().click()
  await page.getByText('Whose figure').first().waitFor()
}

async function askOwner(page: Page, shop: BenchShop): Promise<void> {
  await atWork(page, shop)
  await benchOf(page).goTo(firstCell)
  await page.getByRole('button', { name: 'Ask the owner' }).first().click()
  await page.getByRole('dialog').waitFor()
}

async function typeWrongPin(page: Page, { ready, floor }: BenchShop): Promise<void> {
  await openStep(page, ready, 'fit-pins')
  await benchOf(page).pin(floor.people.machinist.name, '000000')
  await page.getByRole('button', { name: /^Sign “/ }).click()
  await page.getByRole('alert').filter({ hasText: /PIN/ }).waitFor()
}

async function openBalance(page: Page, { weighed }: BenchShop): Promise<void> {
  await openStep(page, weighed, 'balance')
  await page.getByRole('heading', { name: 'Bobweights', exact: true }).waitFor()
}

async function openMenu(page: Page, shop: BenchShop): Promise<void> {
  await openAt(page, '/bench', 'Which bench?')
  await page.getByRole('banner').getByText(shop.floor.people.machinist.name).click()
}

async function raiseFinding(page: Page, shop: BenchShop): Promise<void> {
  await atWork(page, shop)
  await page.getByRole('button', { name: 'Something found' }).click()
  await page.getByRole('dialog').getByLabel('What is it?').waitFor()
}

async function scanStrangeTag(page: Page, { floor }: BenchShop): Promise<void> {
  await openAt(page, `/bench/${floor.benches['pin-hone']}`, 'Bench: pin-hone')
  await page.keyboard.type('4006381333931')
  await page.keyboard.press('Enter')
  await page.getByText('is no tag of this shop').waitFor()
}

async function openTrialFit(page: Page, { atWork: job }: BenchShop): Promise<void> {
  await openAt(page, `/bench/jobs/${job.number}/trial-fit`, 'Will it go together?')
  await page.getByText(/^Not yet:/).waitFor()
}

/** The clock goes on or rests, which waits here until the network is back. */
async function workOffline(page: Page, shop: BenchShop): Promise<void> {
  await atWork(page, shop)
  await untilOpensWithout(page, [{ number: shop.atWork.number, key: 'hone-small-ends' }])
  await page.context().setOffline(true)
  await page.getByRole('button', { name: /^(Start|Go on|Pause)$/ }).click()
  await page.getByText('No network: work goes on').waitFor()
}

async function openKept(page: Page, shop: BenchShop): Promise<void> {
  await workOffline(page, shop)
  await page.goto('/bench/outbox')
  await page.getByRole('heading', { name: /^Waiting/ }).waitFor()
}

async function typeNoCode(page: Page): Promise<void> {
  await openAt(page, '/device', 'Make this a bench device')
  await page.getByLabel('Code').fill('22222-22222')
  await page.getByRole('button', { name: 'This is the tablet' }).click()
  await page.getByText('This code is not known').waitFor()
}

async function openTakeOver(page: Page, { floor }: BenchShop): Promise<void> {
  const secret = drawCode()
  const id = randomUUID()
  await floor.as('owner').post('/api/devices').set(key())
    .send({ id, name: `Pin hone ${id.slice(0, 3)}`, benchId: floor.benches['pin-hone'], secret }).expect(201)
  await openAt(page, '/device', 'Make this a bench device')
  await page.getByLabel('Code').fill(secret)
  await page.getByRole('button', { name: 'This is the tablet' }).click()
  await page.getByRole('heading', { name: /who works here\?/ }).waitFor()
}

async function chooseWhoWorks(page: Page, shop: BenchShop): Promise<void> {
  await openTakeOver(page, shop)
  await page.getByRole('button', { name: shop.floor.people.machinist.name }).click()
  await page.getByRole('group', { name: /^PIN of/ }).waitFor()
}

/** The name of the file that shows a page. */
export function pictureOf(name: string, device: string, light: 'light' | 'dark'): string {
  return `${name.toLowerCase().replace(/[^a-z]+/g, '-')}-${device}-${light}.webp`
}
