import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it, vi } from 'vitest'
import { verifyJob } from '../../apps/api/src/verify/verify-job.ts'
import { fastHashes, standsAlone } from '../support/fast-hashes.ts'
import { complete, countReadings, passBody, read, send, statesOf, workUpTo, type OperationPage } from '../support/floor.ts'
import { openJob, type OpenedJob } from '../support/shop.ts'
import { benchOf } from './support/bench.ts'
import { openBrowser, screens, scrollsSideways, seen, signIn, takeSeat } from './support/browser.ts'
import { startServedFloor, type ServedFloor } from './support/served-floor.ts'
import { everythingOn, untilKept, untilOpensWithout } from './support/tablet.ts'

vi.setConfig({ testTimeout: 600_000 })

let floor: ServedFloor
let browser: Browser

beforeAll(async () => {
  [floor, browser] = await Promise.all([startServedFloor(), openBrowser()])
})
afterAll(async () => {
  await browser.close()
  await floor.stop()
})

const until = (look: () => Promise<unknown>) => vi.waitFor(look, { timeout: 120_000, interval: 100 })
const stepOf = (job: OpenedJob, key: string) => `/bench/jobs/${job.number}/${key}`

it('200 readings without a network, the tab killed half way, the sign-in lapsed, the server killed while they go out: all but a refused one arrive once and in order, and that one is in the list', async () => {
  const { shop } = floor
  const { machinist } = shop.people
  const job = await openJob(shop, { modelId: shop.models['Test V8'], duty: 'street' })
  await workUpTo(shop, job, 'measure-block')
  const before = await countReadings(shop, job)
  const steps = [['receive-parts', 32], ['measure-crank', 52], ['measure-rods', 80], ['measure-block', 36]] as const
  const sheets = new Map<string, OperationPage>()
  for (const [key] of steps) sheets.set(key, await read(shop, job, key))

  const { context, page: first } = await takeSeat(browser, floor.address, screens.desktop)
  await seen(first, 'steps are opened once', async () => {
    await signIn(first, machinist)
    for (const [key] of steps) {
      await first.goto(stepOf(job, key))
      await first.getByLabel('Gauge in hand').waitFor()
      await benchOf(first).chooseGauge('X-length')
    }
    await untilOpensWithout(first, steps.map(([key]) => ({ number: job.number, key })))
  })
  await floor.kill()
  await seen(first, 'the first half without a network', async () => {
    await measure(first, job, sheets.get('receive-parts')!, 32)
    await untilKept(first, 32)
    await measure(first, job, sheets.get('measure-crank')!, 52)
    await untilKept(first, 84)
    await measure(first, job, sheets.get('measure-rods')!, 16)
    await untilKept(first, 100)
    await first.getByText('No network: work goes on, 100 entries wait').waitFor()
  })
  await crash(first)

  const page = await context.newPage()
  await seen(page, 'the second half in a new tab', async () => {
    await page.goto(stepOf(job, 'measure-rods'))
    await page.getByText('No network: work goes on, 100 entries wait').waitFor()
    await measure(page, job, sheets.get('measure-rods')!, 64)
    await untilKept(page, 164)
    await measure(page, job, sheets.get('measure-block')!, 36)
    await untilKept(page, 200)
    await page.getByText('No network: work goes on, 200 entries wait').waitFor()
  })
  // Meanwhile a colleague measures one of the pistons, and the sign-in lapses.
  const skirt = sheets.get('receive-parts')!.features.find(({ points }) => points.length === 1)!
  await send(shop, `/api/jobs/${job.id}/readings`, passBody(sheets.get('receive-parts')!, {
    operationKey: 'receive-parts', feature: skirt, gaugeId: shop.exact.length, values: skirt.nominal!,
  }), 'second').expect(201)
  await shop.pool.query(
    'DELETE FROM session WHERE id_hash = (SELECT id_hash FROM session WHERE person_id = $1 ORDER BY created_at DESC LIMIT 1)', [machinist.id],
  )
  await floor.serve()

  await seen(page, 'sign in again', async () => {
    await page.getByText('200 entries wait until you sign in again').waitFor({ timeout: 120_000 })
    expect(await countReadings(shop, job)).toBe(before + 1)
    await page.getByRole('link', { name: 'Sign in again' }).click()
    await page.getByLabel('Sign-in name').fill(machinist.signInName)
    await page.getByLabel('Password').fill(machinist.password)
    await page.getByRole('button', { name: 'Sign in' }).click()
  })
  await until(async () => expect(await countReadings(shop, job)).toBeGreaterThan(before + 30))
  await floor.kill()
  expect(await countReadings(shop, job)).toBeLessThan(before + 200)
  await floor.serve()
  await until(async () => expect(await countReadings(shop, job)).toBe(before + 200))

  await seen(page, 'the list', async () => {
    await page.goto('/bench/outbox')
    await page.getByRole('heading', { name: 'Refused: 1' }).waitFor()
    await page.getByText(/The next measuring of this feature is pass 2/).waitFor()
    // What had just arrived when the page was left goes out once more, under its keys.
    await until(async () => expect(await page.getByRole('heading', { name: /Waiting/ }).count()).toBe(0))
    await page.getByRole('button', { name: 'Put it away…' }).click()
    await page.getByLabel('Why is it not to be sent?').fill('A colleague measured it')
    await page.getByRole('button', { name: 'Put it away', exact: true }).click()
    await page.getByText('Put away: A colleague measured it').waitFor()
    await page.reload()
    await page.getByText('Put away: A colleague measured it').waitFor()
  })
  const { rows } = await shop.pool.query<{ step: string; point: string }>(
    `SELECT operation_key AS step, pass.part_id || pass.feature || point AS point FROM reading JOIN pass ON pass.id = pass_id
      WHERE job_id = $1 AND reading.person_id = $2 AND device_at IS NOT NULL ORDER BY taken_at`, [job.id, machinist.id],
  )
  const typed = await shop.pool.query<{ step: string; point: string }>(
    `SELECT operation_key AS step, pass.part_id || pass.feature || point AS point FROM reading JOIN pass ON pass.id = pass_id
      WHERE job_id = $1 AND reading.person_id = $2 AND device_at IS NOT NULL ORDER BY device_at`, [job.id, machinist.id],
  )
  expect(rows).toHaveLength(199)
  expect(new Set(rows.map(({ point }) => point)).size).toBe(199)
  for (const [key] of steps) {
    expect(rows.filter(({ step }) => step === key), key).toEqual(typed.rows.filter(({ step }) => step === key))
  }
  await context.close()
})

it('sign-offs that wait are confirmed by one PIN on another device, one under a plan revised meanwhile is to be signed again, and no PIN ever lies on the tablet', async () => {
  const { shop } = floor
  const { machinist } = shop.people
  const stale = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  await workUpTo(shop, stale, 'hone-bores')
  await complete(shop, stale, 'hone-bores')
  const chained = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  await workUpTo(shop, chained, 'tear-down')

  const { context, page, complaints } = await takeSeat(browser, floor.address, screens.desktop)
  await seen(page, 'steps are opened once', async () => {
    await signIn(page, machinist)
    const steps = [[stale, 'hone-bores'], [chained, 'tear-down'], [chained, 'strip-wash']] as const
    for (const [job, key] of steps) {
      await page.goto(stepOf(job, key))
      await page.getByRole('heading', { name: 'Things to see' }).waitFor()
      await untilOpensWithout(page, [{ number: job.number, key }])
    }
  })
  await floor.kill()
  await seen(page, 'three steps are signed without a network', async () => {
    await page.goto(stepOf(stale, 'hone-bores'))
    await markSigned(page)
    await page.goto(stepOf(chained, 'tear-down'))
    await page.getByRole('button', { name: 'Start' }).click()
    await page.getByText(/Work runs:/).waitFor()
    await page.getByRole('button', { name: 'All seen' }).click()
    await page.getByRole('button', { name: 'Pause' }).click()
    await markSigned(page)
    await page.goto(stepOf(chained, 'strip-wash'))
    await page.getByText('The steps before this one are marked as signed, to be confirmed').waitFor()
    await page.getByRole('button', { name: 'All seen' }).click()
    await markSigned(page)
    await page.reload()
    await page.getByText('signed, to be confirmed', { exact: true }).waitFor()
  })
  const { body: plan } = await shop.as('owner').get(`/api/jobs/${stale.number}/plan`).expect(200)
  await send(shop, `/api/jobs/${stale.id}/plan`, {
    duty: 'hard-boost', parts: plan.parts, options: plan.options, sheets: plan.sheets, reason: 'Blower ordered', basedOn: 1,
  }, 'owner').expect(201)
  await floor.serve()

  const other = await takeSeat(browser, floor.address, screens.phone)
  await seen(other.page, 'one PIN confirms all', async () => {
    await signIn(other.page, machinist)
    await other.page.getByText('3 sign-offs to confirm').waitFor({ timeout: 120_000 })
    // nothing depends on them until then
    expect(await statesOf(shop, chained)).toMatchObject({ 'tear-down': 'under-way', 'strip-wash': 'waiting' })
    await other.page.getByRole('link', { name: 'Confirm with your PIN' }).click()
    await benchOf(other.page).pin(machinist.name, machinist.pin)
    await other.page.getByRole('button', { name: 'Confirm all 3' }).click()
    await other.page.getByRole('heading', { name: 'Sign again: 1' }).waitFor()
    await other.page.getByText(/planned otherwise meanwhile/).first().waitFor()
    expect(await scrollsSideways(other.page)).toBe(false)
  })
  expect(await statesOf(shop, chained)).toMatchObject({ 'tear-down': 'signed', 'strip-wash': 'signed' })
  expect((await statesOf(shop, stale))['hone-bores']).not.toBe('signed')
  expect((await read(shop, chained, 'tear-down')).work.running).toBe(false)

  await workUpTo(shop, stale, 'hone-bores')
  await seen(page, 'the tablet signs again, on line, with a PIN', async () => {
    await page.getByText('1 to sign again').waitFor({ timeout: 120_000 })
    await complete(shop, stale, 'hone-bores')
    await page.goto(stepOf(stale, 'hone-bores'))
    await page.getByText('to be signed again', { exact: true }).waitFor()
    await benchOf(page).pin(machinist.name, machinist.pin)
    await page.getByRole('button', { name: /^Sign “/ }).click()
    await page.getByText(new RegExp(`${machinist.name}.*signed on`)).waitFor()
    await page.getByText('1 to sign again').waitFor({ state: 'detached' })
  })
  for (const seat of [page, other.page]) {
    const lies = await everythingOn(seat)
    expect(lies).toContain('tenths-kept/answers')
    expect(lies).toContain(machinist.name)
    expect(lies).not.toMatch(standsAlone(machinist.pin))
    for (const hash of fastHashes(machinist.pin, machinist.id)) expect(lies).not.toContain(hash)
  }
  const client = await shop.pool.connect()
  for (const { id } of [stale, chained]) expect((await verifyJob(client, id)).faults).toEqual([])
  client.release()
  expect([...complaints, ...other.complaints]).toEqual([])
  await Promise.all([context.close(), other.context.close()])
})

it('a step that was marked as signed asks for its PIN although the page to confirm is the first that is opened with the network', async () => {
  const { shop } = floor
  const { machinist } = shop.people
  const job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  await workUpTo(shop, job, 'measure-block')
  await complete(shop, job, 'measure-block')
  const { context, page, complaints } = await takeSeat(browser, floor.address, screens.desktop)
  await signIn(page, machinist)
  await page.goto(stepOf(job, 'measure-block'))
  await page.getByRole('heading', { name: 'Sign', exact: true }).waitFor()
  await untilOpensWithout(page, [{ number: job.number, key: 'measure-block' }])
  await floor.kill()
  await page.reload()
  await page.getByRole('button', { name: /^Mark “.*” as signed$/ }).click()
  await untilKept(page, 1)
  await page.goto('about:blank')
  await floor.serve()
  await seen(page, 'to confirm', async () => {
    await page.goto('/to-confirm')
    await page.getByRole('heading', { name: '1 sign-off to confirm' }).waitFor()
  })
  expect(complaints).toEqual([])
  await context.close()
})

it('a device that is full says so before it takes more, and keeps what was typed on the screen', async () => {
  const { shop } = floor
  const job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  await workUpTo(shop, job, 'measure-crank')
  const { context, page } = await takeSeat(browser, floor.address, screens.desktop)
  await seen(page, 'a full device', async () => {
    // Before the browser asks for the first time: it remembers for a while how much room there was.
    const session = await context.newCDPSession(page)
    const quota = (quotaSize?: number) => session.send('Storage.overrideQuotaForOrigin', { origin: floor.address, ...(quotaSize !== undefined && { quotaSize }) })
    await quota(10)
    await signIn(page, shop.people.machinist)
    await page.goto(stepOf(job, 'measure-crank'))
    await benchOf(page).chooseGauge('X-length')
    const sheet = await read(shop, job, 'measure-crank')
    const nominal = (sheet.features[0]!.nominal! / 25_400_000).toFixed(4)
    const [first, second] = [page.getByRole('grid').getByRole('textbox').first(), page.getByRole('grid').getByRole('textbox').nth(1)]
    await first.click()
    await page.keyboard.type(nominal)
    await page.keyboard.press('Enter')
    await page.getByText('This device cannot keep what is typed').waitFor()
    await second.click()
    await page.keyboard.type(nominal)
    await page.keyboard.press('Enter')
    await page.getByText('This device cannot keep more values at the moment').waitFor()
    expect([await first.inputValue(), await second.inputValue()]).toEqual([nominal, nominal])
    expect((await read(shop, job, 'measure-crank')).passes).toEqual([])
    await quota()
    await page.getByRole('button', { name: 'Try again' }).click()
    await page.getByText('This device cannot keep what is typed').waitFor({ state: 'detached' })
    await second.click()
    await page.keyboard.press('Enter')
    await until(async () => expect((await read(shop, job, 'measure-crank')).passes.flatMap(({ readings }) => readings)).toHaveLength(2))
  })
  await context.close()
})

it('pages of the shop may be opened without a network once they were opened, the customer’s page is left alone', async () => {
  const { shop } = floor
  const { context, page } = await takeSeat(browser, floor.address, screens.desktop)
  const job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street', promisedOn: '2029-01-02' })
  await workUpTo(shop, job, 'measure-crank')
  await seen(page, 'the bench opens without a network', async () => {
    await signIn(page, shop.people.machinist)
    await page.getByRole('link', { name: /Bench: inspection/ }).click()
    await page.getByRole('heading', { name: 'Bench: inspection' }).waitFor()
    await untilOpensWithout(page, [{ number: job.number, key: 'measure-crank' }])
    await floor.kill()
    await page.goto('/')
    await page.getByRole('heading', { name: 'Which bench?' }).waitFor()
    await page.getByRole('link', { name: /Bench: inspection/ }).click()
    await page.getByRole('heading', { name: 'Bench: inspection' }).waitFor()
    // Nobody has opened this step yet: it came along with the bench's queue.
    await page.getByRole('link', { name: new RegExp(`${job.number}.*Measure the crankshaft`) }).click()
    await page.getByRole('grid').first().waitFor()
    // A scanned tag leads there, too: of the job, or of a part that the step measures.
    await page.goto('/bench')
    await page.getByRole('heading', { name: 'Which bench?' }).waitFor()
    await page.keyboard.type(`/jobs/${job.number}/parts/C1`)
    await page.keyboard.press('Enter')
    await page.waitForURL(`**${stepOf(job, 'measure-crank')}?tag=C1`)
    await page.getByRole('grid').first().waitFor()
    await page.keyboard.type(`/jobs/${job.number}/parts/X99`)
    await page.keyboard.press('Enter')
    await page.getByText(/^No network, and no open step of job \d+ that measures X99 was opened here before/).waitFor()
    expect(await page.goto(job.statusPath).catch((error: Error) => error.message)).toMatch(/ERR_CONNECTION_REFUSED/)
    await floor.serve()
    await page.goto('/bench')
    const manifest = await page.evaluate(`fetch(document.querySelector('link[rel=manifest]').href).then((answer) => answer.json())`)
    expect(manifest).toMatchObject({ display: 'standalone', start_url: '/' })
  })
  const [worker] = context.serviceWorkers()
  const kept = await worker!.evaluate(`caches.keys().then(async (names) => (await Promise.all(names.map(async (name) =>
    (await (await caches.open(name)).keys()).map(({ url }) => new URL(url).pathname)))).flat())`) as string[]
  expect(kept.filter((path) => path.startsWith('/s/') || path.startsWith('/api/'))).toEqual([])
  await context.close()
})

/** Types the nominal into as many empty cells of a step as are wanted, from the first one on, as a hand moves. */
async function measure(page: Page, job: OpenedJob, sheet: OperationPage, count: number): Promise<void> {
  if (!page.url().endsWith(stepOf(job, sheet.operation.key))) await page.goto(stepOf(job, sheet.operation.key))
  const grid = page.getByRole('grid').first()
  await grid.waitFor()
  const nominals = new Map(sheet.features.map(({ title, nominal }) => [title, nominal]))
  await page.getByRole('grid').locator('input[tabindex="0"]').first().click()
  let former = ''
  for (let index = 0; index < count; index += 1) {
    const label = await page.evaluate<string>(`document.activeElement.getAttribute('aria-label') ?? ''`)
    const title = [...nominals.keys()].filter((one) => label.startsWith(one)).sort((one, other) => other.length - one.length)[0]
    if (title === undefined) throw new Error(`“${label}” is no cell of ${sheet.operation.key}.`)
    if (title !== former) await tickStates(page, label)
    former = title
    await page.keyboard.type((nominals.get(title)! / 25_400_000).toFixed(4))
    await page.keyboard.press('Enter')
    // The nominal itself over and over is unlikely enough to be asked about: the same key stands by it.
    if (await page.evaluate(`document.activeElement.getAttribute('aria-invalid') === 'true'`)) await page.keyboard.press('Enter')
  }
}

/** What a feature is measured in is said once for those that follow. */
async function tickStates(page: Page, label: string): Promise<void> {
  const open = page.getByRole('region', { name: 'Gauge and state' }).locator('label.choice input:not(:checked)')
  if (await open.count() === 0) return
  while (await open.count() > 0) await open.first().check()
  await page.getByRole('textbox', { name: label, exact: true }).click()
}

async function markSigned(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Mark “.*” as signed$/ }).click()
  await page.getByText('signed, to be confirmed', { exact: true }).waitFor()
}

async function crash(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page)
  const crashed = page.waitForEvent('crash')
  void session.send('Page.crash').catch(() => undefined)
  await crashed
  await page.close()
}
