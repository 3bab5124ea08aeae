import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it, vi } from 'vitest'
import { countReadings, read, workUpTo } from '../support/floor.ts'
import { openJob } from '../support/shop.ts'
import { benchOf } from './support/bench.ts'
import { openBrowser, screens, seen, signIn, takeSeat } from './support/browser.ts'
import { nextVersion, type NextVersion } from './support/next-version.ts'
import { startServedFloor, type ServedFloor } from './support/served-floor.ts'
import { untilKept, untilOpensWithout } from './support/tablet.ts'

vi.setConfig({ testTimeout: 600_000 })

let floor: ServedFloor
let browser: Browser
let next: NextVersion

beforeAll(async () => {
  [floor, browser, next] = await Promise.all([startServedFloor(), openBrowser(), nextVersion()])
})
afterAll(async () => {
  await browser.close()
  await floor.stop()
  await next.remove()
})

it('what was entered without a network outlives a new version: the page says that it is ready, begins it at a touch, and sends all of it once', async () => {
  const { shop } = floor
  const { machinist } = shop.people
  const job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  await workUpTo(shop, job, 'hone-bores')
  const before = await countReadings(shop, job)
  const nominal = (await read(shop, job, 'hone-bores')).features.find(({ feature }) => feature.startsWith('bore'))!.nominal! / 2_540
  const step = `/bench/jobs/${job.number}/hone-bores`
  const { context, page, complaints } = await takeSeat(browser, floor.address, screens.desktop)
  const bench = benchOf(page)

  await seen(page, 'six values without a network', async () => {
    await signIn(page, machinist)
    await page.goto(step)
    await bench.chooseGauge('X-length')
    await untilOpensWithout(page, [{ number: job.number, key: 'hone-bores' }])
    await floor.kill()
    await page.getByRole('checkbox', { name: 'torque plate on' }).check()
    await page.getByRole('textbox', { name: /^Bore 1/ }).first().click()
    await bench.type([0, 1, 0, 1, 0, 1].map((more) => ((nominal + more) / 10_000).toFixed(4)))
    await untilKept(page, 6)
  })
  // What waits still waits when the new version is there: the sign-in has lapsed meanwhile.
  await shop.pool.query('DELETE FROM session WHERE person_id = $1', [machinist.id])
  await floor.serve(next.folder)

  await seen(page, 'the page of the version before goes on, and says that a new one is ready', async () => {
    await page.getByText('6 entries wait until you sign in again').waitFor({ timeout: 120_000 })
    await page.getByText('A new version of these pages is ready').waitFor({ timeout: 120_000 })
    // The service has no files of the version before any more: a page that was not open yet comes from what is kept.
    await page.getByRole('link', { name: 'See what waits' }).click()
    await page.getByRole('heading', { name: 'Waiting, in this order: 6' }).waitFor()
    expect(await isOfNext(page)).toBe(false)
  })
  await seen(page, 'the new version begins with the sign-in, and sends what the one before has kept', async () => {
    await page.getByRole('button', { name: 'Reload the page' }).click()
    await page.getByLabel('Sign-in name').fill(machinist.signInName)
    expect(await isOfNext(page)).toBe(true)
    await page.getByLabel('Password').fill(machinist.password)
    await page.getByRole('button', { name: 'Sign in' }).click()
    await page.getByRole('heading', { name: 'Kept on this device' }).waitFor()
    await untilKept(page, 0)
    expect(await countReadings(shop, job)).toBe(before + 6)
    expect(await page.getByText('A new version of these pages is ready').count()).toBe(0)
  })
  await expect.poll(() => page.evaluate('navigator.serviceWorker.getRegistration().then(({ waiting }) => waiting === null)'), { timeout: 60_000 }).toBe(true)
  await floor.kill()
  await seen(page, 'and opens without a network', async () => {
    await page.goto(step)
    await page.getByText(/No network/).waitFor()
    await bench.cell(await page.getByRole('textbox', { name: /^Bore 1/ }).first().getAttribute('aria-label') ?? '').waitFor()
    expect(await isOfNext(page)).toBe(true)
  })
  expect(complaints).toEqual([])
  await context.close()
})

/** Whether the page runs on files of the new version, and on no others. */
async function isOfNext(page: Page): Promise<boolean> {
  const scripts = await page.evaluate<string[]>(`performance.getEntriesByType('resource').map(({ name }) => name).filter((name) => /immutable.*[.]js$/.test(name))`)
  const newer = scripts.filter((name) => name.endsWith(`${next.sign}.js`))
  expect([0, scripts.length]).toContain(newer.length)
  return newer.length > 0
}
