import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { loadPages } from '../../apps/api/src/ground/pages.ts'
import { addGauge, read, startFloor, workUpTo, type Floor } from '../support/floor.ts'
import { openJob, type OpenedJob } from '../support/shop.ts'
import { benchOf } from './support/bench.ts'
import { openBrowser, screens, seen, signIn, takeSeat } from './support/browser.ts'

const tenth = 2_540
const step = 'measure-block'

let shop: Floor
let browser: Browser
let address: string
let job: OpenedJob

beforeAll(async () => {
  const pages = await loadPages({ origin: undefined, overTls: false })
  shop = await startFloor({ pages })
  await addGauge(shop, {
    mark: 'DB', name: 'Dial bore gauge', kind: 'dial-bore-gauge', analogue: true, clockwiseIsSmaller: true, resolution: tenth,
    standardUncertainty: tenth / 4,
  })
  await addGauge(shop, { mark: 'DIG', name: 'Digital bore gauge', kind: 'digital gauge', resolution: tenth, standardUncertainty: tenth / 4 })
  address = shop.address
  browser = await openBrowser()
  job = await openJob(shop, { duty: 'street' })
  await workUpTo(shop, job, step)
}, 300_000)
afterAll(async () => {
  await browser.close()
  await shop.stop()
})

/** What a digital gauge does: it types its figure and Enter at once, wherever the cursor is. */
async function gaugeTypes(page: Page, figure: string): Promise<void> {
  await page.keyboard.type(figure)
  await page.keyboard.press('Enter')
}

const inches = (tenths: number) => (tenths / 10_000).toFixed(4)

/** Bores at the bench with the torque plate on. */
async function atTheBores(page: Page, gauge: string): Promise<void> {
  await signIn(page, shop.people.machinist)
  await page.goto(`/bench/jobs/${job.number}/${step}`)
  await boresInSight(page)
  await benchOf(page).chooseGauge(gauge)
  await page.getByRole('checkbox', { name: 'torque plate on' }).check()
}

/** A step measures more than bores; which is in sight follows the hand. */
async function boresInSight(page: Page): Promise<void> {
  await page.getByRole('group', { name: 'What is measured' }).getByRole('button', { name: /^Bore / }).click()
}

const boreReadings = async () => (await read(shop, job, step)).passes
  .filter(({ feature }) => feature.startsWith('bore-'))
  .flatMap(({ feature, readings }) => readings.map((reading) => ({ feature, ...reading })))

it('48 readings of a V8 by a gauge that types take 48 values and nothing more; a slip costs one key, undo another', async () => {
  const { page, context, complaints } = await takeSeat(browser, address, screens.desktop)
  const sheet = await read(shop, job, step)
  const bores = sheet.features.filter(({ feature }) => feature.startsWith('bore-'))
  const nominal = Math.round((bores[0]!.nominal ?? 0) / tenth)
  // never the same twice in a row: what comes twice at once is asked about
  const figures = Array.from({ length: 48 }, (_, index) => nominal + [0, 1, 2, 1][index % 4]!)
  await seen(page, 'gauge types 48 bores', async () => {
    await atTheBores(page, 'Digital bore gauge')
    // the cursor stays on the tick: no cell was ever touched
    await page.getByRole('checkbox', { name: 'torque plate on' }).focus()
    for (const figure of figures) await gaugeTypes(page, inches(figure))
    await expect.poll(async () => (await boreReadings()).length, { timeout: 60_000 }).toBe(48)
  })
  const order = bores.flatMap(({ feature, points }) => points.map(({ key }) => `${feature} ${key}`))
  const kept = new Map((await boreReadings()).map(({ feature, point, value }) => [`${feature} ${point}`, value]))
  expect(order.map((cell) => kept.get(cell))).toEqual(figures.map((figure) => figure * tenth))
  // down one axis, up the other, bank by bank
  expect(order.slice(0, 6).map((cell) => cell.split(' ')[1]))
    .toEqual(['top/thrust', 'middle/thrust', 'bottom/thrust', 'bottom/pin', 'middle/pin', 'top/pin'])

  await seen(page, 'a slip at the last bore', async () => {
    const last = bores.at(-1)!
    await boresInSight(page)
    await benchOf(page).goTo(`${last.title}, top, pin axis`)
    await benchOf(page).measureAgain()
    await gaugeTypes(page, inches(nominal))
    await gaugeTypes(page, inches(nominal + 250))
    await page.getByText(/is the thimble one turn off/).waitFor()
    // one touch clears it, and the gauge types anew
    await page.getByRole('button', { name: 'Clear it (Esc)' }).click()
    expect(await benchOf(page).cell(`${last.title}, middle, thrust axis`).inputValue()).toBe('')
    await gaugeTypes(page, inches(nominal + 250))
    await page.getByText(/is the thimble one turn off/).waitFor()
    expect(await benchOf(page).cell(`${last.title}, middle, thrust axis`).inputValue()).toBe(inches(nominal + 250))
    // one key stands by it; the first value was never lost
    await page.keyboard.press('Enter')
    await page.getByText(/is the thimble one turn off/).waitFor({ state: 'hidden' })
    await expect.poll(async () => (await boreReadings()).filter(({ confirmed }) => confirmed).map(({ value }) => value))
      .toEqual([(nominal + 250) * tenth])

    // undo is one key in the empty cell that followed
    await page.keyboard.press('Backspace')
    await gaugeTypes(page, inches(nominal + 1))
    await expect.poll(async () => (await boreReadings()).filter(({ supersedes }) => supersedes !== null).map(({ value, reason }) => [value, reason]))
      .toEqual([[(nominal + 1) * tenth, 'Typed wrong, taken back at once.']])
  })
  expect(complaints).toEqual([])
  await context.close()
})

it('deviations from a setting are echoed in words, and a drifted zero voids what was read', async () => {
  const { page, context, complaints } = await takeSeat(browser, address, screens.phone)
  await seen(page, 'deviations and the zero', async () => {
    await atTheBores(page, 'Dial bore gauge')
    const hands = benchOf(page)
    await hands.goTo('Bore 1, top, thrust axis')
    await hands.measureAgain()
    const nominal = (await read(shop, job, step)).features.find(({ feature }) => feature === 'bore-1')!.nominal!
    const size = inches(Math.round(nominal / tenth))
    await page.getByLabel('DB is set to zero on').fill(size)
    await page.getByRole('button', { name: 'Set', exact: true }).click()
    await page.getByText(`DB is zero at ${size} in`).waitFor()

    await hands.goTo('Bore 1, top, thrust axis')
    await page.keyboard.type('+1')
    await page.getByText(`0.0001 in smaller than ${size} in.`).first().waitFor()
    await page.keyboard.press('Enter')
    for (const figure of ['-1', '0', '1', '-2', '0']) await gaugeTypes(page, figure)
    await expect.poll(async () => (await boreReadings()).filter(({ typed }) => typed === '+1').map(({ value }) => value))
      .toEqual([Math.round(nominal / tenth) * tenth - tenth])
    await expect.poll(async () => (await read(shop, job, step)).passes.filter(({ setting }) => setting !== null)
      .map(({ readings }) => readings.length)).toEqual([6])

    await page.getByRole('button', { name: 'Put DB down: check its zero' }).click()
    await page.getByLabel(/^Back on .* it shows$/).fill('+2')
    await page.getByRole('button', { name: 'Zero checked' }).click()
    await page.getByText(/DB has drifted/).waitFor()
    await hands.goTo('Bore 1, top, thrust axis')
    expect(await hands.cell('Bore 1, top, thrust axis').inputValue()).toBe('')
  })
  expect((await read(shop, job, step)).passes.filter(({ isVoid }) => isVoid).map(({ feature }) => feature)).toEqual(['bore-1'])
  expect(complaints).toEqual([])
  await context.close()
})
