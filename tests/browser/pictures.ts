import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { freePort } from '../../apps/api/src/ground/ports.ts'
import { people } from '../../prisma/demo/people.ts'
import { startServer, untilHealthy } from '../support/running-server.ts'
import { openBrowser, screens, signIn, takeSeat } from './support/browser.ts'
import { untilPrinted } from './support/printed.ts'

/** Takes the README's pictures from a demo shop that is loaded for them and removed again. */

const folder = path.join(import.meta.dirname, '../../docs/pictures')
const looks = { colorScheme: 'light', reducedMotion: 'reduce', timezoneId: 'UTC' } as const satisfies BrowserContextOptions

interface Picture {
  readonly name: string
  readonly screen: BrowserContextOptions
  readonly open: (page: Page) => Promise<void>
}

const dataFolder = await mkdtemp(path.join(tmpdir(), 'tenths-pictures-'))
const port = await freePort()
const server = startServer({ PORT: String(port), DATA_DIR: dataFolder })
try {
  await untilHealthy(server, port, 600_000)
  const statusLink = await untilPrinted(server, /A customer's link\s+(\S+)/)
  const browser = await openBrowser()
  try {
    for (const picture of picturesOf(statusLink)) await take(browser, picture)
  } finally {
    await browser.close()
  }
} finally {
  server.process.kill('SIGTERM')
  await server.ended
  await rm(dataFolder, { recursive: true, force: true })
}

function picturesOf(statusLink: string): readonly Picture[] {
  const status = async (page: Page) => void (await page.goto(statusLink))
  return [
    { name: 'counter', screen: screens.desktop, open: openCounter },
    { name: 'bench', screen: screens.desktop, open: openBench },
    { name: 'bench-phone', screen: screens.phone, open: openBench },
    { name: 'desk', screen: screens.desktop, open: openDesk },
    { name: 'status', screen: screens.desktop, open: status },
    { name: 'status-phone', screen: screens.phone, open: status },
    { name: 'record', screen: screens.desktop, open: openRecord },
  ]
}

/** Each picture in a browser of its own, as one person sees it. */
async function take(browser: Browser, { name, screen, open }: Picture): Promise<void> {
  const { page, context, complaints } = await takeSeat(browser, `http://localhost:${port}`, { ...screen, ...looks })
  await open(page)
  // No row lies under the pointer.
  await page.mouse.move(0, 0)
  await page.screenshot({ path: path.join(folder, `${name}.png`) })
  await context.close()
  if (complaints.length > 0) throw new Error(`${name}: ${complaints.join(' ')}`)
  process.stdout.write(`docs/pictures/${name}.png\n`)
}

async function openCounter(page: Page): Promise<void> {
  await signIn(page, people.pim)
  await page.getByRole('table').waitFor()
}

/** A bushing that is outside, with what to take off it. */
async function openBench(page: Page): Promise<void> {
  await signIn(page, people.sunniva)
  await page.getByRole('link', { name: /Pin hone/ }).click()
  await page.getByRole('link', { name: /Bush and hone small ends.*outside/ }).first().click()
  await page.getByText(/Hone 0\.0003 in off rod 3 small end/).first().waitFor()
  // On a phone the readings lie below the gauge.
  if (isNarrow(page)) await page.getByRole('region', { name: 'Readings' }).evaluate((readings) => readings.scrollIntoView())
}

async function openDesk(page: Page): Promise<void> {
  await signIn(page, people.odile)
  await page.getByRole('heading', { name: 'Findings to decide' }).waitFor()
}

function isNarrow(page: Page): boolean {
  return (page.viewportSize()?.width ?? 0) < 600
}

/** The job that was handed over, at a step that tells it all: fits, gauge, what was seen, who signed, the seal. */
async function openRecord(page: Page): Promise<void> {
  await signIn(page, people.odile)
  await page.getByRole('link', { name: 'Counter' }).click()
  await page.getByLabel('Which jobs').selectOption({ label: 'Handed over' })
  await page.getByRole('row', { name: /Handed over/ }).getByRole('link').first().click()
  await page.getByRole('link', { name: 'Build record' }).click()
  await page.getByRole('region', { name: /Size the small ends/ }).evaluate((step) => step.scrollIntoView())
}
