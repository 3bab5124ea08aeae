import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setUpShop, signIn } from '@tenths/contract'
import type { Browser, Page } from 'playwright-core'
import { freePort } from '../../../apps/api/src/ground/ports.ts'
import { people, shop } from '../../../prisma/demo/people.ts'
import { startServer, untilHealthy } from '../../support/running-server.ts'
import { benchOf } from '../support/bench.ts'
import { takeSeat } from '../support/browser.ts'
import { untilPrinted } from '../support/printed.ts'
import { openUnboosted } from '../support/unboosted-job.ts'

/** How much slower than this machine the tablet at the bench is taken to be. */
const slowedBy = 4
const step = 'hone-bores'
const tablet = { viewport: { width: 1024, height: 768 } }

/** The built program with one V8 at the hone: eight bores, six readings each. */
export interface Hone {
  readonly address: string
  readonly path: string
  /** A size that every bore may be found at, as a machinist types it. */
  readonly size: string
  stop(): Promise<void>
}

export async function openHone(): Promise<Hone> {
  const dataFolder = await mkdtemp(path.join(tmpdir(), 'tenths-figures-'))
  const port = await freePort()
  const address = `http://localhost:${port}`
  const server = startServer({ PORT: String(port), DATA_DIR: dataFolder }, ['--empty'])
  const stop = async () => {
    server.process.kill('SIGTERM')
    await server.ended
    await rm(dataFolder, { recursive: true, force: true })
  }
  try {
    await untilHealthy(server, port)
    await setUp(address, await untilPrinted(server, /Set the shop up at\s+\S+#(\S+)/))
    const { job, floor } = await openUnboosted(address, new Date().toISOString().slice(0, 10))
    const { operations } = await floor.readPlan()
    await floor.workThrough(operations[operations.findIndex(({ key }) => key === step) - 1]!.key)
    const { features, operation } = await floor.readStep(step)
    const bore = features.find(({ place }) => place === operation.features[0]?.place)
    return { address, path: `/bench/jobs/${job.number}/${step}`, size: ((bore?.nominal ?? 0) / 25_400_000).toFixed(4), stop }
  } catch (error) {
    await stop()
    throw error
  }
}

async function setUp(address: string, secret: string): Promise<void> {
  const { name: ownerName, signInName, password, pin } = people.odile
  const answer = await fetch(address + setUpShop.path, {
    method: setUpShop.method,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({
      secret, shopName: shop.name, timeZone: shop.timeZone, unit: shop.unit, ownerName, signInName, password, pin, isDemo: false,
    }),
  })
  if (!answer.ok) throw new Error(await answer.text())
}

/** A machinist's tablet, slowed, signed in and on no page yet. */
export async function takeTablet(browser: Browser, { address }: Hone): Promise<Page> {
  const { page, context } = await takeSeat(browser, address, tablet)
  const { signInName, password } = people.sunniva
  const answer = await context.request.post(signIn.path, { data: { signInName, password } })
  if (!answer.ok()) throw new Error(await answer.text())
  const tools = await context.newCDPSession(page)
  await tools.send('Emulation.setCPUThrottlingRate', { rate: slowedBy })
  return page
}

/** Sizes as a honed bore has them: never the same twice in a row, which would be asked about. */
export function sizeNear({ size }: Hone, reading: number): string {
  return (Number(size) + [2, 3, 1, 2, 1, 3][reading % 6]! / 10_000).toFixed(4)
}

/** Opens the step with a gauge in hand and the block as the step wants it; the cursor is in the first cell. */
export async function goToHone(page: Page, hone: Hone): Promise<void> {
  await page.goto(hone.path)
  await benchOf(page).chooseGauge(/[Bb]ore/)
  for (const tick of await page.getByRole('region', { name: 'Gauge and state' }).locator('input[type=checkbox]:not([role])').all()) await tick.check()
  await page.getByRole('grid').getByRole('textbox').first().click()
}
