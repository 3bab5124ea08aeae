import type { Page } from 'playwright-core'
import type { TestJob } from '../../support/floor.ts'
import { benchOf } from './bench.ts'
import type { BenchShop } from './bench-shop.ts'

/** One page of the bench in one of its states. */
export interface BenchPage {
  readonly name: string
  /** Opens it for the machinist who is signed in, and waits until it is there. */
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
  { name: 'empty queue', open: (page, { floor }) => openAt(page, `/bench/${floor.benches['balancer']}`, 'Bench: balancer') },
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
]

async function openAt(page: Page, path: string, heading: string): Promise<void> {
  await page.goto(path)
  await page.getByRole('heading', { name: heading }).waitFor()
  await settled(page)
}

async function openStep(page: Page, { number }: TestJob, key: string): Promise<void> {
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

async function openMenu(page: Page, shop: BenchShop): Promise<void> {
  await openAt(page, '/bench', 'Which bench?')
  await page.getByRole('banner').getByText(shop.floor.people.machinist.name).click()
}
