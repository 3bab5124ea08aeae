import type { Page } from 'playwright-core'
import { openJob } from '../../support/shop.ts'
import type { BenchShop } from './bench-shop.ts'

/** One page of the other rooms, for the owner, who may enter all of them. */
export interface RoomPage {
  readonly name: string
  /** Opens it for the owner who is signed in, and waits until it is there. */
  readonly open: (page: Page, shop: BenchShop) => Promise<void>
}

/** Every page outside the bench: whoever adds one adds its line. */
export const roomPages: readonly RoomPage[] = [
  { name: 'counter', open: at('/counter') },
  { name: 'opening a job', open: at('/counter/new') },
  { name: 'new engine', open: at('/counter/engines/new') },
  { name: 'job at the counter', open: ofJob((number) => `/counter/jobs/${number}`) },
  { name: 'tag', open: ofJob((number) => `/counter/jobs/${number}/tag`) },
  { name: 'job', open: ofJob((number) => `/jobs/${number}`) },
  { name: 'record', open: ofJob((number) => `/jobs/${number}/record`) },
  { name: 'desk', open: at('/desk') },
  { name: 'plan', open: ofJob((number) => `/desk/jobs/${number}/plan`) },
  { name: 'gauges', open: at('/desk/gauges') },
  { name: 'people', open: at('/desk/people') },
  { name: 'rules', open: at('/desk/rules') },
  { name: 'number that is refused', open: refuseNumber },
  { name: 'status page', open: async (page, { floor }) => at((await openJob(floor)).statusPath)(page) },
  { name: 'status page of no job', open: at('/s/AAAAAAAAAAAAAAAAAAAAAA') },
]

function ofJob(pathOf: (number: number) => string): RoomPage['open'] {
  return (page, { atWork }) => at(pathOf(atWork.number))(page)
}

/** A number of plausibility that is out of order with its fellow, and one that is not the starter's. */
async function refuseNumber(page: Page): Promise<void> {
  await at('/desk/rules')(page)
  await page.getByRole('heading', { name: 'Beside its neighbours' }).click()
  await page.getByLabel('Journal, as it came in').fill('0.0002')
  await page.getByLabel('Why', { exact: true }).fill('Closer.')
  await page.getByRole('button', { name: 'Save' }).click()
  await page.getByText(/must not lie above/).first().waitFor()
}

function at(path: string): (page: Page) => Promise<void> {
  return async (page) => {
    await page.goto(path)
    await page.getByRole('heading', { level: 1 }).first().waitFor()
    await page.getByText('Reading…').first().waitFor({ state: 'detached' })
    await page.waitForLoadState('networkidle', { timeout: 1_000 }).catch(() => undefined)
  }
}
