import pg from 'pg'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { loadPages } from '../../apps/api/src/ground/pages.ts'
import { addGauge, startFloor, workUpTo, type Floor } from '../support/floor.ts'
import { openJob } from '../support/shop.ts'
import { openBrowser, screens, scrollsSideways, seen, signIn, takeSeat } from './support/browser.ts'

let shop: Floor
let browser: Browser
let address: string
let superuser: pg.Client

beforeAll(async () => {
  shop = await startFloor({ pages: await loadPages({ origin: undefined, overTls: false }) })
  address = shop.address
  superuser = new pg.Client({ connectionString: shop.database.superuserUrl })
  await superuser.connect()
  browser = await openBrowser()
})
afterAll(async () => {
  await superuser.end()
  await browser.close()
  await shop.stop()
})

const gauges = (page: Page) => page.getByText(/^G-\d+/)
const shown = (page: Page, count: number) => expect.poll(() => gauges(page).count(), { timeout: 60_000, interval: 200 }).toBe(count)

it('A transaction held open for 2 s while 100 others commit, a reconnect in between: the browser has seen all 101; after a restore the pages show the restored state by themselves', async () => {
  const { page, context, complaints } = await takeSeat(browser, address, screens.desktop)
  await seen(page, 'the owner looks at the gauges', async () => {
    await signIn(page, shop.people.owner)
    await page.goto('/desk/gauges')
    await page.getByRole('button', { name: 'Add the gauge' }).waitFor()
    await shown(page, 0)
  })

  // Nothing is told past a transaction that is still open: what commits behind it must not be lost with the connection.
  await superuser.query('BEGIN')
  await superuser.query(
    `INSERT INTO gauge (id, mark, name, kind, quantity, resolution, analogue, standard_uncertainty, calibrated_until)
     VALUES (gen_random_uuid(), 'G-000', 'Held open', 'micrometer', 'length', 2540, false, 1270, '2099-12-31')`,
  )
  await superuser.query(`INSERT INTO event (kind) VALUES ('held-open')`)
  const heldFor = new Promise((resolve) => { setTimeout(resolve, 2_000) })
  for (let count = 1; count <= 50; count += 1) await addGauge(shop, { mark: `G-${String(count).padStart(3, '0')}` })
  shop.app.server.closeAllConnections()
  for (let count = 51; count <= 100; count += 1) await addGauge(shop, { mark: `G-${String(count).padStart(3, '0')}` })
  await heldFor
  await superuser.query('COMMIT')
  await seen(page, 'all 101 are shown', () => shown(page, 101))

  // As a restored backup leaves the shop: an older state, and a generation of its own.
  await superuser.query('BEGIN')
  await superuser.query(`DELETE FROM gauge WHERE mark > 'G-060'`)
  await superuser.query(`DELETE FROM event WHERE id > (SELECT min(id) FROM event) + 60`)
  await superuser.query('UPDATE shop SET generation = gen_random_uuid()')
  await superuser.query('COMMIT')
  await seen(page, 'the restored state is shown', () => shown(page, 61))
  expect(complaints).toEqual([])
  await context.close()
})

it('what changes while a page is being opened, before it follows the shop, is shown all the same: at first, and at every later time', async () => {
  const { page, context, complaints } = await takeSeat(browser, address, screens.desktop)
  await signIn(page, shop.people.owner)
  const before = Number((await shop.pool.query<{ count: string }>(`SELECT count(*) FROM gauge WHERE mark LIKE 'G-%'`)).rows[0]?.count)
  for (const time of [1, 2]) {
    let release = (): void => undefined
    const held = new Promise<void>((open) => { release = open })
    await page.route('**/api/events*', async (route) => { await held; await route.continue() })
    if (time === 1) await page.evaluate('localStorage.removeItem("changes-seen")')
    await seen(page, `the gauges, time ${time}`, async () => {
      await page.goto('/desk/gauges')
      await shown(page, before + time - 1)
      await addGauge(shop, { mark: `G-9${time}` })
      release()
      await shown(page, before + time)
    })
    await page.unroute('**/api/events*')
  }
  expect(complaints).toEqual([])
  await context.close()
})

it('whoever is not signed in any more is told once, and is back at the same page after signing in again', async () => {
  const { page, context, complaints } = await takeSeat(browser, address, screens.phone)
  const { counter } = shop.people
  await seen(page, 'the counter looks for jobs', async () => {
    await signIn(page, counter)
    await page.goto('/counter?state=closed')
    await page.getByRole('heading', { name: 'Jobs' }).waitFor()
  })
  await shop.pool.query(
    'DELETE FROM session WHERE id_hash = (SELECT id_hash FROM session WHERE person_id = $1 ORDER BY created_at DESC LIMIT 1)', [counter.id],
  )
  await openJob(shop)
  await seen(page, 'the sign-in has run out', async () => {
    const notice = page.getByText('You are not signed in any more')
    await notice.waitFor()
    expect(await notice.count()).toBe(1)
    expect(await page.getByRole('button', { name: 'Try again' }).count()).toBe(0)
    expect(await scrollsSideways(page)).toBe(false)
    await page.getByRole('link', { name: 'Sign in again' }).click()
    await page.getByLabel('Sign-in name').fill(counter.signInName)
    await page.getByLabel('Password').fill(counter.password)
    await page.getByRole('button', { name: 'Sign in' }).click()
    await page.waitForURL('**/counter?state=closed')
    await page.getByRole('heading', { name: 'Jobs' }).waitFor()
    expect(await notice.count()).toBe(0)
  })
  expect(complaints).toEqual([])
  await context.close()
})

it('a note on something seen shows as it was written last, also where another one was written before', async () => {
  const job = await openJob(shop)
  await workUpTo(shop, job, 'measure-block')
  const [one, two] = await Promise.all([takeSeat(browser, address, screens.desktop), takeSeat(browser, address, screens.desktop)])
  const caps = (page: Page) => page.getByRole('group', { name: 'Main caps torqued' })
  const note = (page: Page) => caps(page).getByRole('textbox')
  for (const [{ page }, person] of [[one, shop.people.machinist], [two, shop.people.second]] as const) {
    await signIn(page, person)
    await page.goto(`/bench/jobs/${job.number}/measure-block`)
    await caps(page).waitFor()
  }
  await seen(one.page, 'the first writes', async () => {
    await caps(one.page).getByRole('button', { name: 'Note' }).click()
    await note(one.page).fill('by the sheet')
    await caps(one.page).getByRole('button', { name: 'Seen', exact: true }).click()
  })
  await seen(two.page, 'the second writes', async () => {
    await expect.poll(() => note(two.page).inputValue()).toBe('by the sheet')
    await note(two.page).fill('in three turns')
    await two.page.keyboard.press('Enter')
  })
  await seen(one.page, 'the first reads', () => expect.poll(() => note(one.page).inputValue(), { timeout: 10_000 }).toBe('in three turns'))
  expect([...one.complaints, ...two.complaints]).toEqual([])
  await Promise.all([one, two].map(({ context }) => context.close()))
})

it('over plain HTTP on a network the bench works on line, and one line says what is missing', async () => {
  const { port } = new URL(address)
  const context = await browser.newContext({ baseURL: `http://bench.test:${port}`, locale: 'en-US' })
  const page = await context.newPage()
  const { signInName, password } = shop.people.machinist
  const { headers } = await shop.anonymous().post('/api/sign-in').send({ signInName, password }).expect(200)
  const [cookie = ''] = String(headers['set-cookie']).split(';')
  const [name = '', value = ''] = cookie.split('=')
  await context.addCookies([{ name, value, domain: 'bench.test', path: '/', httpOnly: true, sameSite: 'Lax' }])
  await seen(page, 'the bench over plain HTTP', async () => {
    await page.goto('/bench')
    await page.getByRole('heading', { name: 'Which bench?' }).waitFor()
    await page.getByText(/^Over plain HTTP this page cannot be installed/).waitFor()
    expect(await page.evaluate('window.isSecureContext')).toBe(false)
  })
  await context.close()
})
