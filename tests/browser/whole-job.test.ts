import { shortBlock } from '@tenths/domain'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { loadPages } from '../../apps/api/src/ground/pages.ts'
import { addGauge, read, send, startFloor, workUpTo, type Floor } from '../support/floor.ts'
import { openJob, type OpenedJob } from '../support/shop.ts'
import { benchOf } from './support/bench.ts'
import { openBrowser, screens, scrollsSideways, seen, signIn, takeSeat } from './support/browser.ts'

const tenth = 2_540
/** U = 2u = 0.00018 in: a micrometer and a bore gauge of an ordinary shop, together (from memory). */
const ordinary = 0.9 * tenth

let shop: Floor
let browser: Browser
let address: string

beforeAll(async () => {
  const pages = await loadPages({ origin: undefined, overTls: false })
  shop = await startFloor({ pages })
  await addGauge(shop, { mark: 'MB', name: 'Micrometer and bore gauge', kind: 'bore-gauge', standardUncertainty: ordinary, resolution: 1_270 })
  address = shop.address
  browser = await openBrowser()
})
afterAll(async () => {
  await browser.close()
  await shop.stop()
})

it('without boost the same 0.0004 in is within its limits', async () => {
  const job = await openJob(shop, { duty: 'street' })
  await workUpTo(shop, job, 'hone-small-ends')
  const { page, context, complaints } = await takeSeat(browser, address, screens.desktop)
  await seen(page, 'street: bench measures', async () => {
    const hands = benchOf(page)
    await signIn(page, shop.people.machinist)
    await page.goto(`/bench/jobs/${job.number}/hone-small-ends`)
    await hands.chooseGauge('Pin-fit gauge')
    await hands.setOnMate(true)
    await hands.goTo('Rod 1 small end, front, along rod')
    await hands.type(['0.0004', '0.0004', '0.0004', '0.0004'])
    await hands.goTo('Rod 1 small end, front, along rod')
    await hands.verdict('Pin in rod 1').getByText('within').first().waitFor()
    await hands.verdict('Pin in rod 1').getByText('limits 0.0003 in to 0.0008 in').waitFor()
  })
  expect(complaints).toEqual([])
  await context.close()
})

/** What the story hands on from one person to the next. */
interface Story {
  readonly customer: string
  readonly job: OpenedJob
  readonly statusPath: string
}

describe.each(Object.entries(screens))('on a %s', (screen, options) => {
  it('all four people carry one job from the customer’s name to the sealed build record', async () => {
    const counter = await takeSeat(browser, address, options)
    const bench = await takeSeat(browser, address, options)
    const owner = await takeSeat(browser, address, options)
    const customer = await takeSeat(browser, address, { ...options, javaScriptEnabled: false })

    const story = await seen(counter.page, `${screen}: counter opens`, () => openAtCounter(counter.page, screen))
    await workUpTo(shop, story.job, 'hone-small-ends')
    await seen(bench.page, `${screen}: bench measures`, () => measureAtBench(bench.page, story))
    await seen(owner.page, `${screen}: owner decides`, () => decideAtDesk(owner.page, story))
    await seen(bench.page, `${screen}: bench signs`, () => signAtBench(bench.page))
    await seen(customer.page, `${screen}: customer follows`, () => followAsCustomer(customer.page, story))

    await workUpTo(shop, story.job, null)
    await decideRest(story)
    await seen(counter.page, `${screen}: counter hands over`, () => handOverAtCounter(counter.page, story))
    const gone = await customer.page.goto(story.statusPath)
    expect(gone?.status()).toBe(404)

    for (const seat of [counter, bench, owner]) expect(seat.complaints).toEqual([])
    await Promise.all([counter, bench, owner, customer].map(({ context }) => context.close()))
  })
})

async function openAtCounter(page: Page, screen: string): Promise<Story> {
  const name = `Wren Halloway ${screen}`
  await signIn(page, shop.people.counter)
  await page.getByRole('link', { name: 'Open a job' }).first().click()
  await page.getByLabel('Part of the name or phone number').fill(name)
  await page.getByRole('option', { name: /as a new customer/ }).click()
  await page.getByLabel('Phone').fill('555 0142')
  await page.getByRole('button', { name: 'Add the customer' }).click()
  await page.getByRole('radio', { name: /Test V8/ }).check()
  await page.getByLabel('How it will be used').selectOption({ label: 'Hard boost' })
  await page.getByRole('button', { name: '6 weeks' }).click()
  await page.getByLabel('What is wanted').fill('Short block for a boosted V8')
  await page.getByRole('button', { name: 'Add a line' }).click()
  await page.getByLabel('What', { exact: true }).fill('Block with caps')
  await page.getByRole('button', { name: 'Open the job' }).click()
  await page.getByRole('heading', { name: 'The job is open' }).waitFor()
  const statusPath = new URL(await page.getByLabel(/status link/i).first().inputValue()).pathname
  await page.getByRole('link', { name: 'Print the tag' }).click()
  await page.getByRole('img', { name: /^Code that opens/ }).waitFor()
  const number = Number(/jobs\/(\d+)\/tag/.exec(page.url())?.[1])
  await page.goto(`/counter/jobs/${number}`)
  await page.getByText(name).first().waitFor()
  await page.getByLabel('On the status page').fill('Your engine is stripped and clean.')
  await page.getByRole('button', { name: 'Put it on the page' }).click()
  await page.getByText('Your engine is stripped and clean.').last().waitFor()
  expect(await scrollsSideways(page)).toBe(false)
  const { body } = await shop.as('counter').get(`/api/jobs/${number}`).expect(200)
  return { customer: name, job: { id: String((body as { id: string }).id), number, statusPath }, statusPath }
}

/**
 * Common practice, no source: a boosted bushing wants 0.0006 to 0.0010 in, 0.0007 best; found at 0.0004 it is honed
 * 0.0003 larger, on diameter.
 */
async function measureAtBench(page: Page, { job }: Story): Promise<void> {
  const hands = benchOf(page)
  await signIn(page, shop.people.machinist)
  await page.goto('/bench')
  await page.getByRole('link', { name: /Bench: pin-hone/ }).click()
  await page.getByRole('link', { name: new RegExp(`${job.number}.*Bush and hone small ends`) }).click()
  await page.getByRole('heading', { name: 'Bush and hone small ends to their own pins' }).waitFor()
  await page.getByText(/maker’s sheet, local codes and licensed practice govern/).first().waitFor()

  await hands.chooseGauge('Pin-fit gauge')
  await hands.setOnMate(true)
  await hands.goTo('Rod 1 small end, front, along rod')
  await hands.type(['0.0004', '0.0004', '0.0004', '0.0004'])
  await hands.goTo('Rod 1 small end, front, along rod')
  const first = hands.verdict('Pin in rod 1')
  expect(await first.locator('header').first().innerText()).toMatch(/✕\s*outside/)
  await first.getByText(/0\.0003 in off rod 1 small end, on diameter, to reach 0\.0007 in/).waitFor()

  await hands.measureAgain()
  // The hand goes on by itself: this bushing and six others, the last one loose.
  await hands.type(Array.from({ length: 28 }, () => '0.0007'))
  await hands.type(Array.from({ length: 4 }, () => '0.0012'))
  await hands.goTo('Rod 1 small end, front, along rod')
  await first.getByText('within').first().waitFor()

  // The same clearance as the difference of two sizes, with what a micrometer and a bore gauge carry together.
  await settled(job, 32 + 4)
  const pinSize = await sizeOfPin(job)
  await hands.chooseGauge('Micrometer and bore gauge')
  await hands.setOnMate(false)
  await hands.measureAgain()
  const size = ((pinSize + 7 * tenth) / 25_400_000).toFixed(5)
  await hands.type([size, size, size, size])
  await hands.goTo('Rod 1 small end, front, along rod')
  await first.getByText('not proven').first().waitFor()
  await hands.chooseGauge('Pin-fit gauge')
  await hands.setOnMate(true)
  await hands.measureAgain()
  await hands.type(['0.0007', '0.0007', '0.0007', '0.0007'])
  await hands.goTo('Rod 1 small end, front, along rod')
  await first.getByText('within').first().waitFor()

  await page.getByText('In words').click()
  await page.getByText(/^Cylinder 1: wide chamfer of the rod to the front/).waitFor()
  await page.getByText(/^Cylinder 5: wide chamfer of the rod to the back/).waitFor()

  await hands.goTo('Rod 8 small end, front, along rod')
  await hands.verdict('Pin in rod 8').getByRole('button', { name: 'Ask the owner' }).click()
  await page.getByLabel('What should the owner know?').fill('New bushings are two weeks away.')
  await page.getByRole('button', { name: 'Ask', exact: true }).click()
  await page.getByText(/The owner has been asked/).waitFor()
  await hands.seeAll()
  expect(await scrollsSideways(page)).toBe(false)
}

/** Size of the pin in rod 1, as it was measured at receipt. */
async function sizeOfPin(job: OpenedJob): Promise<number> {
  const { placed, passes } = await read(shop, job, 'hone-small-ends')
  const { place, feature } = shortBlock.pinDiameter(1)
  const part = placed.find((one) => one.place === place)?.partId
  const value = passes.find((pass) => pass.partId === part && pass.feature === feature)?.readings[0]?.value
  if (value === undefined) throw new Error('pin 1 is not measured')
  return value
}

async function settled(job: OpenedJob, readings: number): Promise<void> {
  await expect.poll(async () => {
    const { rows } = await shop.pool.query<{ count: number }>(
      `SELECT count(*) FROM reading JOIN pass ON pass.id = reading.pass_id WHERE pass.job_id = $1 AND pass.operation_key = 'hone-small-ends'`,
      [job.id],
    )
    return rows[0]?.count
  }, { timeout: 20_000 }).toBe(readings)
}

async function decideAtDesk(page: Page, { job }: Story): Promise<void> {
  await signIn(page, shop.people.owner)
  await page.goto('/desk')
  await page.getByRole('button', { name: new RegExp(`Decide about Pin in rod 8 outside of job ${job.number}`) }).click()
  await page.getByLabel('Accept as it is (concession)').check()
  await page.getByLabel('Reason').fill('Held to 2,000 kilometres, then looked at again.')
  await page.getByRole('dialog').getByRole('button', { name: 'Decide' }).click()
  await page.getByRole('dialog').waitFor({ state: 'hidden' })
  expect(await scrollsSideways(page)).toBe(false)
}

async function signAtBench(page: Page): Promise<void> {
  const hands = benchOf(page)
  const { machinist } = shop.people
  // The owner's decision arrives by itself.
  await page.getByRole('group', { name: `PIN of ${machinist.name}` }).waitFor()
  await hands.pin(machinist.name, '000000')
  const sign = page.getByRole('button', { name: /^Sign “Bush and hone small ends/ })
  await sign.click()
  await page.getByRole('alert').filter({ hasText: /PIN/ }).waitFor()
  await hands.pin(machinist.name, machinist.pin)
  await sign.click()
  await page.getByText('signed on').waitFor()
}

async function followAsCustomer(page: Page, { statusPath }: Story): Promise<void> {
  const answer = await page.goto(statusPath)
  expect(answer?.status()).toBe(200)
  expect(answer?.headers()['x-robots-tag']).toContain('noindex')
  expect(answer?.headers()['cache-control']).toContain('no-store')
  const text = await page.locator('body').innerText()
  expect(text).toContain('Machining')
  expect(text).toContain('Your engine is stripped and clean.')
  const others = await shop.pool.query<{ name: string }>('SELECT name FROM customer')
  expect(others.rows.length).toBeGreaterThan(0)
  for (const { name } of [...Object.values(shop.people), ...others.rows]) expect(text).not.toContain(name)
  expect(text).not.toMatch(/[$€£]|concession|0\.0012/)
  expect(await page.locator('script[src]').count()).toBe(0)
}

/** What the plan itself found, the maker's sheets that nobody has, is the owner's to decide before the engine leaves. */
async function decideRest({ job }: Story): Promise<void> {
  const { body } = await shop.as('owner').get('/api/findings').expect(200)
  for (const { id, jobId } of (body as { findings: { id: string; jobId: string }[] }).findings) {
    if (jobId !== job.id) continue
    const decision = { decision: 'concession', reason: 'Tightened by the sheet in the box.', low: null, high: null }
    await send(shop, `/api/findings/${id}/decision`, decision, 'owner').expect(201)
  }
}

async function handOverAtCounter(page: Page, { job, customer }: Story): Promise<void> {
  await page.goto(`/counter/jobs/${job.number}`)
  await page.getByRole('button', { name: 'Hand over' }).click()
  await page.getByText(/The record is sealed/).waitFor()
  await page.getByRole('button', { name: 'Revoke at once' }).click()
  await page.getByText('No link is live').waitFor()

  await page.goto(`/jobs/${job.number}/record`)
  await page.getByRole('heading', { name: 'Bush and hone small ends to their own pins' }).waitFor()
  const { body } = await shop.as('counter').get(`/api/jobs/${job.number}/build-record`).expect(200)
  const record = body as { sealHead: string; operations: { lines: { requirement: { title: string } }[] }[] }
  const text = await page.locator('main').textContent() ?? ''
  expect(text.includes(record.sealHead), 'the seal head is on the record').toBe(true)
  for (const { requirement } of record.operations.flatMap(({ lines }) => lines)) expect(text.includes(requirement.title), requirement.title).toBe(true)
  for (const words of [shop.people.machinist.name, 'Held to 2,000 kilometres', customer]) expect(text.includes(words), words).toBe(true)
  const pdf = await page.request.get(`/api/jobs/${job.number}/build-record.pdf`)
  expect((await pdf.body()).subarray(0, 5).toString()).toBe('%PDF-')
}
