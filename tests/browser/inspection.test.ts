import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { loadPages } from '../../apps/api/src/ground/pages.ts'
import { complete, read, sign, startFloor, workUpTo, type Floor } from '../support/floor.ts'
import { openJob, type OpenedJob } from '../support/shop.ts'
import { benchOf } from './support/bench.ts'
import { openBrowser, screens, scrollsSideways, seen, signIn, takeSeat } from './support/browser.ts'

let shop: Floor
let browser: Browser
let address: string

beforeAll(async () => {
  const pages = await loadPages({ origin: undefined, overTls: false })
  shop = await startFloor({ pages })
  address = shop.address
  browser = await openBrowser()
}, 120_000)
afterAll(async () => {
  await browser.close()
  await shop.stop()
})

const narrow = { ...screens.phone, viewport: { width: 360, height: 740 } }
const area = (page: Page, title: RegExp) => page.getByRole('group', { name: title })

/** A large photograph as a camera writes it: 3000 dots wide, with a block that says where and with what. */
async function cameraFile(page: Page): Promise<{ name: string; mimeType: string; buffer: Buffer }> {
  const text = await page.evaluate(`(() => {
    const canvas = Object.assign(document.createElement('canvas'), { width: 3000, height: 2000 })
    const pen = canvas.getContext('2d')
    pen.fillStyle = '#456'; pen.fillRect(0, 0, 3000, 2000)
    pen.fillStyle = '#fd0'; pen.fillRect(900, 400, 40, 1200)
    return canvas.toDataURL('image/jpeg', 0.9).split(',')[1]
  })()`)
  const bytes = Buffer.from(String(text), 'base64')
  const block = Buffer.from('Exif\0\0MM\0*\0\0\0\x08\0\0', 'latin1')
  const head = Buffer.from([0xff, 0xe1, 0, block.length + 2])
  return { name: 'rod.jpg', mimeType: 'image/jpeg', buffer: Buffer.concat([bytes.subarray(0, 2), head, block, bytes.subarray(2)]) }
}

async function testAtBench(page: Page, job: OpenedJob): Promise<void> {
  await signIn(page, shop.people.machinist)
  await page.goto(`/bench/jobs/${job.number}/crack-test`)
  await page.getByRole('heading', { name: 'Tests' }).waitFor()
  await page.getByText('7 areas are still to be tested.').waitFor()
  await page.getByRole('button', { name: 'No indication on the rest' }).click()
  await page.getByText('1 area is still to be tested.').waitFor()

  // A test under pressure has a figure, and says so at its place.
  const jacket = area(page, /water jacket/)
  await jacket.getByRole('button', { name: 'No indication' }).click()
  await jacket.getByRole('alert').filter({ hasText: 'Type the test pressure.' }).waitFor()
  await jacket.getByLabel('Test pressure, psi').fill('45')
  await jacket.getByRole('button', { name: 'No indication' }).click()
  await jacket.getByText(/under pressure at 45\.0 psi/).waitFor()

  const rod = area(page, /^Rod 1: beam, bolt seats and small end$/)
  await rod.getByRole('button', { name: 'Indication', exact: true }).click()
  await rod.getByRole('alert').filter({ hasText: 'Say where' }).waitFor()
  await rod.getByLabel('What was seen, and where').fill('6 mm along the beam')
  await rod.getByRole('button', { name: 'Indication', exact: true }).click()
  await rod.getByText(/Indication, R1: magnetic particle/).first().waitFor()
  await rod.getByLabel(/^Photograph ?of Rod 1/).setInputFiles(await cameraFile(page))
  await rod.getByRole('button', { name: /Show larger/ }).waitFor()
  await page.getByText(/The owner has not decided yet: Rod 1/).waitFor()
  expect(await scrollsSideways(page)).toBe(false)

  await rod.getByRole('button', { name: /Show larger/ }).click()
  await page.getByRole('dialog').getByRole('img', { name: /^Rod 1: beam/ }).waitFor()
  await page.keyboard.press('Escape')
}

/** What lies in the database is smaller than what the camera wrote, and without what it wrote beside the picture. */
async function lookAtBytes(job: OpenedJob): Promise<void> {
  const { rows: [kept] } = await shop.pool.query<{ bytes: Buffer }>('SELECT bytes FROM photograph WHERE job_id = $1', [job.id])
  expect(kept?.bytes.includes('Exif')).toBe(false)
  expect(kept?.bytes.subarray(0, 3).toString('hex')).toBe('ffd8ff')
  const frame = kept?.bytes.indexOf(Buffer.from([0xff, 0xc0])) ?? -1
  // Height and width of the frame, ITU-T T.81, B.2.2.
  expect([kept?.bytes.readUInt16BE(frame + 7), kept?.bytes.readUInt16BE(frame + 5)]).toEqual([1600, 1067])
}

async function decideAtDesk(page: Page): Promise<void> {
  await signIn(page, shop.people.owner)
  await page.goto('/desk')
  await page.getByRole('button', { name: /Rod 1.*Show larger/ }).waitFor()
  await page.getByRole('button', { name: /^Decide about Rod 1/ }).click()
  await page.getByLabel('Work it again').check()
  await page.getByLabel('Reason').fill('Polish it out and test again.')
  await page.getByRole('dialog').getByRole('button', { name: 'Decide' }).click()
  await page.getByRole('dialog').waitFor({ state: 'hidden' })
}

async function signTest(page: Page): Promise<void> {
  // The decision arrives by itself, and by itself makes nothing sound.
  await page.getByText('Polish it out and test again.').waitFor()
  await page.getByText(/Rod 1: beam.* is not sound: only the owner can let it pass/).waitFor()
  const rod = area(page, /^Rod 1: beam, bolt seats and small end$/)
  await rod.getByRole('button', { name: 'No indication' }).click()
  await rod.getByText('Earlier results').waitFor()
  await benchOf(page).seeAll()
  const { machinist } = shop.people
  await page.getByRole('group', { name: `PIN of ${machinist.name}` }).waitFor()
  await benchOf(page).pin(machinist.name, machinist.pin)
  await page.getByRole('button', { name: /^Sign “Crack/ }).click()
  await page.getByText('signed on').waitFor()
}

async function soakAndFind(page: Page, job: OpenedJob): Promise<void> {
  await page.goto(`/bench/jobs/${job.number}/measure-block`)
  await page.getByText('Block and gauges side by side since …?').waitFor()
  await page.getByRole('button', { name: 'Answer' }).click()
  await page.getByRole('button', { name: /^2 hours or longer/ }).click()
  await page.getByText('Block and gauges side by side since …?').waitFor({ state: 'hidden' })

  // Without a network nothing that was typed or taken is lost.
  await page.getByRole('button', { name: 'Something found' }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByLabel('What is it?').fill('Bolt broken off in the deck')
  const [picture] = [await cameraFile(page)]
  await dialog.getByLabel(/^Photograph ?of/).setInputFiles(picture)
  await dialog.getByRole('img', { name: 'Photograph 1, not kept yet' }).waitFor()
  await page.context().setOffline(true)
  await dialog.getByRole('button', { name: 'Put it before the owner' }).click()
  await dialog.waitFor({ state: 'hidden' })
  const finding = page.getByRole('group', { name: 'Bolt broken off in the deck' })
  await finding.getByText('Waits on this device until it gets through.').waitFor()
  await finding.getByRole('img', { name: /photograph 1 that waits on this device/ }).waitFor()
  await page.context().setOffline(false)
  await finding.getByRole('button', { name: /Show larger/ }).waitFor()
  await finding.getByText('Waits on this device').waitFor({ state: 'detached' })
  await page.getByText('The owner has not decided yet: Bolt broken off in the deck.').waitFor()
}

async function typeLots(page: Page, job: OpenedJob): Promise<void> {
  await page.goto(`/bench/jobs/${job.number}/pistons-on-rods`)
  await page.getByRole('heading', { name: 'Lot or serial of what goes in' }).waitFor()
  expect(await page.getByRole('button', { name: 'All seen' }).count(), 'two people sign, each thing for itself').toBe(0)
  await page.getByText('2 parts have no lot or serial yet.').waitFor()
  // A scanner types and ends with Enter; the next field takes the next one.
  await page.getByLabel('piston 1, P1').click()
  await page.keyboard.type(`PST-${job.number}`)
  await page.keyboard.press('Enter')
  await page.getByText(`PST-${job.number}`).waitFor()
  await page.getByRole('button', { name: /^No number on it ?: piston pin/ }).click()
  await page.getByText('no number', { exact: true }).waitFor()
  expect(await scrollsSideways(page)).toBe(false)
}

async function recall(page: Page, job: OpenedJob): Promise<void> {
  await page.goto('/desk/lots')
  await page.getByLabel('Lot or serial').fill(`pst-${job.number}`)
  const line = page.getByRole('row').filter({ hasText: `PST-${job.number}` })
  await line.getByRole('link').filter({ hasText: String(job.number) }).waitFor()
  await line.getByText('piston 1', { exact: true }).waitFor()
  await page.getByLabel('Lot or serial').fill('nothing like it')
  await page.getByText('No part of this shop has such a lot').waitFor()
}

describe.each([['phone', narrow], ['desktop', screens.desktop]] as const)('on a %s', (screen, options) => {
  it('a crack is found, photographed, decided and tested again; a soak is asked for; lots are scanned and found again', async () => {
    const job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
    await workUpTo(shop, job, 'crack-test')
    const bench = await takeSeat(browser, address, options)
    const owner = await takeSeat(browser, address, options)
    await seen(bench.page, `${screen}: bench tests`, () => testAtBench(bench.page, job))
    await lookAtBytes(job)
    await seen(owner.page, `${screen}: owner decides`, () => decideAtDesk(owner.page))
    await seen(bench.page, `${screen}: bench signs`, () => signTest(bench.page))
    await seen(bench.page, `${screen}: soak and finding`, () => soakAndFind(bench.page, job))

    const { findings } = await read(shop, job, 'measure-block')
    await seen(owner.page, `${screen}: owner lets it pass`, async () => {
      await owner.page.goto('/desk')
      await owner.page.getByRole('button', { name: /^Decide about Bolt broken off/ }).click()
      await owner.page.getByLabel('Accept as it is (concession)').check()
      await owner.page.getByLabel('Reason').fill('Drilled out at the mill.')
      await owner.page.getByRole('dialog').getByRole('button', { name: 'Decide' }).click()
      await owner.page.getByRole('dialog').waitFor({ state: 'hidden' })
    })
    expect(findings.map(({ title }) => title)).toContain('Bolt broken off in the deck')
    await bench.page.getByText('Drilled out at the mill.').waitFor()
    await complete(shop, job, 'measure-block')
    await sign(shop, job, 'measure-block')
    await workUpTo(shop, job, 'pistons-on-rods')
    await seen(bench.page, `${screen}: lots`, () => typeLots(bench.page, job))
    await seen(owner.page, `${screen}: recall`, () => recall(owner.page, job))
    await seen(owner.page, `${screen}: record`, async () => {
      await owner.page.goto(`/jobs/${job.number}/record`)
      const step = owner.page.getByRole('region', { name: /Crack and pressure test/ })
      await step.getByRole('heading').first().waitFor()
      if (screen === 'phone') await step.getByRole('heading').first().click()
      await step.getByText(/6 mm along the beam/).waitFor()
      await step.getByRole('button', { name: /Show larger/ }).waitFor()
      expect(await scrollsSideways(owner.page)).toBe(false)
    })
    for (const seat of [bench, owner]) expect(seat.complaints).toEqual([])
    await Promise.all([bench, owner].map(({ context }) => context.close()))
  }, 240_000)
})
