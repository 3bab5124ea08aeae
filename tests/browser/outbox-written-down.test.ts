import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it, vi } from 'vitest'
import { verifyJob } from '../../apps/api/src/verify/verify-job.ts'
import { read, statesOf, tickAll, workUpTo } from '../support/floor.ts'
import { openJob } from '../support/shop.ts'
import { benchOf } from './support/bench.ts'
import { openBrowser, screens, scrollsSideways, seen, signIn, takeSeat } from './support/browser.ts'
import { startServedFloor, type ServedFloor } from './support/served-floor.ts'
import { untilKept, untilOpensWithout } from './support/tablet.ts'

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

it('without a network a finding with its photograph is raised, cracks are looked for, a lot is typed and a step signed; all arrive once, in order, when it is back', async () => {
  const { shop } = floor
  const { machinist } = shop.people
  const cracks = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  const rods = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  await workUpTo(shop, cracks, 'crack-test')
  await tickAll(shop, cracks, await read(shop, cracks, 'crack-test'))
  await workUpTo(shop, rods, 'pistons-on-rods')
  const { context, page, complaints } = await takeSeat(browser, floor.address, { ...screens.phone, viewport: { width: 360, height: 740 } })

  await seen(page, 'steps are opened once', async () => {
    await signIn(page, machinist)
    for (const [job, key] of [[rods, 'pistons-on-rods'], [cracks, 'crack-test']] as const) {
      await page.goto(`/bench/jobs/${job.number}/${key}`)
      await page.getByRole('heading', { name: 'Sign', exact: true }).waitFor()
      await untilOpensWithout(page, [{ number: job.number, key }])
    }
  })
  await floor.kill()

  await seen(page, 'a crack test without a network', async () => {
    await raiseFinding(page)
    const finding = page.getByRole('group', { name: 'Bolt broken off in the pan rail' })
    await finding.getByText('Waits on this device until it gets through.').waitFor()
    await page.getByRole('button', { name: 'No indication on the rest' }).click()
    const jacket = page.getByRole('group', { name: /water jacket/ })
    await jacket.getByLabel('Test pressure, psi').fill('45')
    await jacket.getByRole('button', { name: 'No indication' }).click()
    await jacket.getByText(/under pressure at 45\.0/).waitFor()
    await jacket.getByText('Waits on this device until it gets through.').waitFor()
    await page.getByText(/still to be tested/).waitFor({ state: 'detached' })
    expect(await scrollsSideways(page)).toBe(false)
    // A finding, its photograph and seven areas.
    await untilKept(page, 9)
    await page.getByRole('button', { name: /^Mark “.*” as signed$/ }).click()
    await page.getByText('signed, to be confirmed', { exact: true }).waitFor()
  })
  await seen(page, 'a lot without a network, and after a reload', async () => {
    await page.goto(`/bench/jobs/${rods.number}/pistons-on-rods`)
    await page.getByLabel('piston 1, P1').fill('PST-1')
    await page.keyboard.press('Enter')
    await page.getByText('PST-1', { exact: true }).waitFor()
    await untilKept(page, 11)
    await page.reload()
    await page.getByText('PST-1', { exact: true }).waitFor()
    await page.getByText('1 part has no lot or serial yet.').waitFor()
    await page.goto('/bench/outbox')
    await page.getByRole('heading', { name: 'Waiting, in this order: 11' }).waitFor()
    await page.getByText('piston 1, P1: lot PST-1', { exact: true }).waitFor()
    expect(await scrollsSideways(page)).toBe(false)
  })
  await floor.serve()
  await until(async () => expect((await read(shop, rods, 'pistons-on-rods')).lots.map(({ lot }) => lot)).toEqual(['PST-1', '']))

  const step = await read(shop, cracks, 'crack-test')
  expect(step.findings).toMatchObject([{ title: 'Bolt broken off in the pan rail', stops: false, raisedBy: machinist.name }])
  expect(step.findings[0]!.photographs).toHaveLength(1)
  expect(step.inspections.map(({ counts, inspector }) => [counts, inspector])).toEqual(Array(7).fill([true, machinist.name]))
  expect(step.inspections.at(-1)).toMatchObject({ item: 'block-jacket', pressure: 310_264 })
  expect(step.pending).toMatchObject([{ state: 'to-confirm', signers: [{ name: machinist.name }] }])
  const { rows } = await shop.pool.query<{ kind: string }>(
    `SELECT kind FROM event WHERE person_id = $1 AND kind IN ('raise-finding', 'keep-photograph', 'record-inspections', 'mark-signed')
        AND job_id = $2 ORDER BY id`, [machinist.id, cracks.id],
  )
  expect(rows.map(({ kind }) => kind)).toEqual(['raise-finding', 'keep-photograph', ...Array<string>(7).fill('record-inspections'), 'mark-signed'])

  await seen(page, 'it is confirmed', async () => {
    await page.getByText('Everything has arrived').waitFor()
    await page.goto('/to-confirm')
    await benchOf(page).pin(machinist.name, machinist.pin)
    await page.getByRole('button', { name: /^Confirm/ }).click()
    await until(async () => expect((await statesOf(shop, cracks))['crack-test']).toBe('signed'))
  })
  const client = await shop.pool.connect()
  expect((await verifyJob(client, cracks.id)).faults).toEqual([])
  client.release()
  expect(complaints).toEqual([])
  await context.close()
})

it('a lot that somebody else typed meanwhile is refused at its place and put right there', async () => {
  const { shop } = floor
  const job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  await workUpTo(shop, job, 'pistons-on-rods')
  const place = (await read(shop, job, 'pistons-on-rods')).lots[0]!
  const { context, page, complaints } = await takeSeat(browser, floor.address, screens.desktop)
  await seen(page, 'refused and put right', async () => {
    await signIn(page, shop.people.machinist)
    await page.goto(`/bench/jobs/${job.number}/pistons-on-rods`)
    await page.getByLabel('piston 1, P1').waitFor()
    await untilOpensWithout(page, [{ number: job.number, key: 'pistons-on-rods' }])
    await floor.kill()
    await page.getByLabel('piston 1, P1').fill('PST-1')
    await page.keyboard.press('Enter')
    await untilKept(page, 1)
    await shop.as('second').post(`/api/jobs/${job.id}/lots`).set('idempotency-key', crypto.randomUUID())
      .send({ reason: '', lots: [{ id: crypto.randomUUID(), partId: place.partId, lot: 'PST-9' }] }).expect(201)
    await floor.serve()
    await page.getByText(/Refused: lot PST-1\. There is a lot already/).waitFor({ timeout: 120_000 })
    await page.getByRole('button', { name: /^Change ?the lot of piston 1/ }).click()
    const dialog = page.getByRole('dialog')
    expect(await dialog.getByLabel('Lot or serial').inputValue()).toBe('PST-1')
    await dialog.getByRole('button', { name: 'Keep' }).click()
    await dialog.getByText('say why another one is right').waitFor()
    await dialog.getByLabel('Why is another one right?').fill('The box says so')
    await dialog.getByRole('button', { name: 'Keep' }).click()
    await page.getByText('Refused:').waitFor({ state: 'detached' })
    await until(async () => expect((await read(shop, job, 'pistons-on-rods')).lots[0]).toMatchObject({
      lot: 'PST-1', history: [{ lot: 'PST-9' }, { lot: 'PST-1', reason: 'The box says so' }],
    }))
  })
  expect(complaints).toEqual([])
  await context.close()
})

async function raiseFinding(page: Page): Promise<void> {
  const picture = await page.evaluate(`(() => {
    const canvas = Object.assign(document.createElement('canvas'), { width: 800, height: 600 })
    canvas.getContext('2d').fillRect(100, 100, 300, 30)
    return canvas.toDataURL('image/jpeg', 0.9).split(',')[1]
  })()`)
  await page.getByRole('button', { name: 'Something found' }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByRole('button', { name: 'Put it before the owner' }).click()
  await dialog.getByText('Say in a few words what it is.').waitFor()
  await dialog.getByLabel('What is it?').fill('Bolt broken off in the pan rail')
  await dialog.getByRole('checkbox', { name: /^It stops this step/ }).uncheck()
  await dialog.getByLabel(/^Photograph ?of/).setInputFiles({ name: 'a.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(String(picture), 'base64') })
  await dialog.getByRole('img', { name: 'Photograph 1, not kept yet' }).waitFor()
  await dialog.getByRole('button', { name: 'Put it before the owner' }).click()
  await dialog.waitFor({ state: 'hidden' })
}
