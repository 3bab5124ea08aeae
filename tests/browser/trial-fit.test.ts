import type { FeatureReference } from '@tenths/domain'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { loadPages } from '../../apps/api/src/ground/pages.ts'
import { complete, countReadings, read, sign, startFloor, verdictOn, workUpTo, type Floor } from '../support/floor.ts'
import { openJob, type OpenedJob } from '../support/shop.ts'
import { openBrowser, screens, scrollsSideways, seen, signIn, takeSeat, type Seat } from './support/browser.ts'
import { tabTo } from './support/keyboard.ts'

const tenth = 2_540

let shop: Floor
let browser: Browser
let address: string
let job: OpenedJob

/** Pistons 3 and 5 are 4 tenths large and small; their bores were honed to each other’s. */
const swapped = ({ place, feature }: FeatureReference, wanted: number) => {
  if (feature === 'skirt') return wanted + (place === 'piston/3' ? 4 : place === 'piston/5' ? -4 : 0) * tenth
  return wanted + (feature === 'bore-3' ? -8 : feature === 'bore-5' ? 8 : 0) * tenth
}

beforeAll(async () => {
  shop = await startFloor({ pages: await loadPages({ origin: undefined, overTls: false }) })
  address = shop.address
  browser = await openBrowser()
  job = await openJob(shop)
  await workUpTo(shop, job, 'receive-parts')
  await complete(shop, job, 'receive-parts', swapped)
  await sign(shop, job, 'receive-parts')
  await workUpTo(shop, job, 'hone-bores')
  await complete(shop, job, 'hone-bores', swapped)
}, 180_000)
afterAll(async () => {
  await browser.close()
  await shop.stop()
})

const narrow = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true }

describe('trial fit', () => {
  it('applied with one touch marks the parts and swaps their clearances without a value typed again', async () => {
    const bench = await takeSeat(browser, address, narrow)
    const desk = await takeSeat(browser, address, screens.desktop)
    const { page } = bench
    await seen(page, 'trial fit on a phone', async () => {
      await signIn(page, shop.people.machinist)
      await page.goto(`/bench/jobs/${job.number}/hone-bores`)
      await page.getByRole('link', { name: 'Will it go together?' }).click()
      await page.getByRole('heading', { name: 'Will it go together?' }).waitFor()
      await page.getByText('Not yet: 2 conflicts.').waitFor()
      const conflicts = page.getByRole('region', { name: 'Conflicts' })
      await conflicts.getByRole('heading', { name: 'Piston in bore 3' }).waitFor()
      await conflicts.getByText(/^Hone 0\.\d+ in off bore 3/).waitFor()
      expect(await conflicts.getByRole('img', { name: /below the low limit/ }).count()).toBe(1)
      await conflicts.getByText('Why?').first().click()
      await conflicts.getByText(/4\.03.* ×/).first().waitFor()

      const better = page.getByRole('article').filter({ has: page.getByRole('heading', { name: 'Pistons to bores' }) })
      await better.getByText('Opens again:').waitFor()
      await better.getByRole('row', { name: 'Outside their limits 2 0' }).waitFor()
      expect(await scrollsSideways(page)).toBe(false)

      const owner = desk.page
      await signIn(owner, shop.people.owner)
      await owner.goto(`/bench/jobs/${job.number}/trial-fit`)
      await owner.getByText('Not yet: 2 conflicts.').waitFor()

      const before = await read(shop, job, 'hone-bores')
      const readings = await countReadings(shop, job)
      await tabTo(page, better.getByRole('button', { name: 'Move 2 parts' }))
      await page.keyboard.press('Enter')
      await page.getByText('Mark piston P3 as cylinder 5.').waitFor()
      await page.getByText('Mark piston P5 as cylinder 3.').waitFor()
      await page.getByText('Not yet: 2 conflicts.').waitFor({ state: 'detached' })
      await page.getByRole('heading', { name: 'Pistons to bores', exact: true }).waitFor({ state: 'detached' })
      await owner.getByText('Not yet: 2 conflicts.').waitFor({ state: 'detached' })

      const after = await read(shop, job, 'hone-bores')
      const shift = (cylinder: number) =>
        verdictOn(after, `piston-in-bore/${cylinder}`).least! - verdictOn(before, `piston-in-bore/${cylinder}`).least!
      expect([shift(3), shift(5), shift(1)]).toEqual([8 * tenth, -8 * tenth, 0])
      expect(await countReadings(shop, job)).toBe(readings)
    })
    await done(bench)
    await done(desk)
  }, 180_000)

  it('is reached from the queue, and says of every fit not measured what the drawing says', async () => {
    const seat = await takeSeat(browser, address, screens.phone)
    const { page } = seat
    const fresh = await openJob(shop)
    await seen(page, 'trial fit of a new job', async () => {
      await signIn(page, shop.people.machinist)
      await page.goto(`/bench/${shop.benches['counter']}`)
      await page.getByRole('link', { name: `Will job ${fresh.number} go together?` }).first().click()
      await page.getByText(/^Unknown: \d+ not measured\.$/).waitFor()
      await page.getByRole('region', { name: /^Not yet measured/ }).getByText('Pin in piston').click()
      const line = page.getByRole('article').filter({ has: page.getByRole('heading', { name: 'Pin in piston 1', exact: true }) })
      await line.getByText(/^forecast from the drawing: .*nominal, .*nominal\.$/).waitFor()
      expect(await scrollsSideways(page)).toBe(false)
    })
    await done(seat)
  }, 120_000)
})

describe('the pictures of a step', () => {
  it('show where each ring’s gap lies, and which way rods and pistons face from the front and from above', async () => {
    const seat = await takeSeat(browser, address, { viewport: { width: 820, height: 1180 }, hasTouch: true })
    const { page } = seat
    await seen(page, 'pictures', async () => {
      await signIn(page, shop.people.machinist)
      for (const step of ['ring-gaps', 'install-pistons']) {
        await page.goto(`/bench/jobs/${job.number}/${step}`)
        await page.getByRole('heading', { name: 'Ring-gap clock' }).waitFor()
        const clock = page.getByRole('img', { name: /^Cylinders 1, 2, 3, 4, 5, 6, 7 and 8, seen on the crown/ })
        expect(await clock.getAttribute('aria-label')).toMatch(/Top ring at 10:30 \(315°\).*Major thrust at 3:00/)
      }
      await page.goto(`/bench/jobs/${job.number}/pistons-on-rods`)
      await page.getByRole('heading', { name: 'From the front' }).waitFor()
      await page.getByRole('heading', { name: 'From above' }).waitFor()
      await page.getByText('In words').click()
      await page.getByText(/^From the front: Cylinders 1, 2, 3, 4, on your right: the wide chamfer of the rods faces you/).waitFor()
      expect(await scrollsSideways(page)).toBe(false)
    })
    await done(seat)
  }, 120_000)
})

async function done({ complaints, context }: Seat): Promise<void> {
  expect(complaints).toEqual([])
  await context.close()
}
