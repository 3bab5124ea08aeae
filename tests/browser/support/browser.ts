import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { chromium, type Browser, type BrowserContext, type BrowserContextOptions, type Page } from 'playwright-core'
import { findChromium } from '../../../scripts/chromium.mjs'

export const screens = {
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
  desktop: { viewport: { width: 1280, height: 900 } },
} as const satisfies Record<string, BrowserContextOptions>

export async function openBrowser(): Promise<Browser> {
  return chromium.launch({
    executablePath: await findChromium(),
    // A name that is not loopback, for what a browser allows only there or over HTTPS.
    args: ['--no-sandbox', '--disable-quic', '--disable-background-networking', '--host-resolver-rules=MAP bench.test 127.0.0.1'],
  })
}

/** A page in a browser of its own, as one person has it: what the page complains about is kept. */
export interface Seat {
  readonly page: Page
  readonly context: BrowserContext
  /** Script errors, and what the console called errors, but for answers that the test asked to be refused. */
  readonly complaints: string[]
}

/**
 * A refused request is reported by the browser itself, whatever the page makes of it. A page makes something of each answer
 * of the service that a person can bring about, and of a network that is gone; of nothing else: a script, a picture or a
 * page that is missing, or a service that fails, is a complaint.
 */
function isExpected(text: string, url: string): boolean {
  if (!text.startsWith('Failed to load resource')) return false
  if (/net::ERR_(INTERNET_DISCONNECTED|CONNECTION_\w+|EMPTY_RESPONSE|NETWORK_CHANGED|INCOMPLETE_CHUNKED_ENCODING)/.test(text)) return true
  const status = Number(/status of (\d{3})/.exec(text)?.[1])
  const { pathname } = new URL(url)
  // A customer's link that leads to no job any more.
  if (pathname.startsWith('/s/')) return status === 404
  return pathname.startsWith('/api/') && [400, 401, 403, 404, 409, 410, 422, 423, 429].includes(status)
}

export async function takeSeat(browser: Browser, address: string, options: BrowserContextOptions): Promise<Seat> {
  const context = await browser.newContext({ baseURL: address, locale: 'en-US', ...options })
  context.setDefaultTimeout(30_000)
  const page = await context.newPage()
  const complaints: string[] = []
  page.on('pageerror', (error) => complaints.push(error.message))
  page.on('console', (message) => {
    const { url } = message.location()
    if (message.type() === 'error' && !isExpected(message.text(), url)) complaints.push(`${message.text()} ${url}`)
  })
  return { page, context, complaints }
}

export async function signIn(page: Page, { signInName, password }: { signInName: string; password: string }): Promise<void> {
  await page.goto('/sign-in')
  await page.getByLabel('Sign-in name').fill(signInName)
  await page.getByLabel('Password').fill(password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.getByRole('navigation', { name: 'Rooms of the shop' }).waitFor()
}

/** Runs a step; when it fails, keeps what was on the screen and says where. */
export async function seen<T>(page: Page, name: string, step: () => Promise<T>): Promise<T> {
  try {
    return await step()
  } catch (error) {
    const file = path.join(mkdtempSync(path.join(tmpdir(), 'tenths-screen-')), `${name.replace(/\W+/g, '-')}.png`)
    await page.screenshot({ path: file, fullPage: true }).catch(() => undefined)
    throw new Error(`${name} (the screen: ${file})`, { cause: error })
  }
}

/** Whether the page itself can be pushed sideways. */
export function scrollsSideways(page: Page): Promise<boolean> {
  return page.evaluate('document.documentElement.scrollWidth > document.documentElement.clientWidth')
}
