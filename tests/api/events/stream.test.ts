import type { AddressInfo } from 'node:net'
import pg from 'pg'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { openStream, signInCookie, type StreamedEvent, type TestStream } from '../../support/event-stream.ts'
import { addCustomer, openJob, startShop, type TestShop } from '../../support/shop.ts'

let shop: TestShop
let port: number
let cookie: string
const streams: TestStream[] = []
beforeAll(async () => {
  shop = await startShop()
  port = (shop.app.server.address() as AddressInfo).port
  cookie = await signInCookie(shop.app, shop.people.machinist)
})
afterEach(() => { for (const stream of streams.splice(0)) stream.close() })
afterAll(() => shop.stop())

async function watch(lastId?: string): Promise<TestStream> {
  const stream = await openStream(port, cookie, lastId)
  streams.push(stream)
  await stream.until((seen) => seen.length > 0)
  return stream
}

const changes = (seen: StreamedEvent[]) => seen.filter(({ event }) => event === 'change')

describe('the stream of changes', () => {
  it('is for people who are signed in', async () => {
    const answer = await shop.anonymous().get('/api/events').expect(401)
    expect(answer.body.code).toBe('not-signed-in')
  })

  it('tells where to look again, one event for each command, and nothing of what is there', async () => {
    const stream = await watch()
    expect(stream.seen[0]).toMatchObject({ event: 'ready' })
    const job = await openJob(shop)
    const seen = changes(await stream.until((all) => changes(all).length >= 2))
    expect(seen.map(({ data }) => data)).toEqual([
      { kind: 'add-customer', jobId: null, operationKey: null },
      { kind: 'open-job', jobId: job.id, operationKey: null },
    ])
  })

  it('shows a transaction held open for 2 s while 100 others commit, a reconnect in between: all 101 are seen', async () => {
    const before = await watch()
    const slow = new pg.Client({ connectionString: shop.database.serviceUrl })
    await slow.connect()
    await slow.query('BEGIN')
    await slow.query(`INSERT INTO event (kind) VALUES ('held-open')`)
    const heldFor = new Promise((resolve) => setTimeout(resolve, 2_000))
    for (let round = 0; round < 50; round += 1) await shop.pool.query(`INSERT INTO event (kind) VALUES ('quick')`)
    before.close()
    const after = await watch(before.seen.at(-1)?.id)
    for (let round = 0; round < 50; round += 1) await shop.pool.query(`INSERT INTO event (kind) VALUES ('quick')`)
    await heldFor
    await slow.query('COMMIT')
    await slow.end()
    await after.until((seen) => changes([...before.seen, ...seen]).length >= 101)
    const kinds = changes([...before.seen, ...after.seen]).map(({ data }) => data.kind)
    expect(kinds.filter((kind) => kind === 'held-open')).toHaveLength(1)
    expect(kinds.filter((kind) => kind === 'quick')).toHaveLength(100)
    const ids = changes([...before.seen, ...after.seen]).map(({ id }) => id)
    expect(new Set(ids).size).toBe(101)
  })

  it('sends what was missed since the last id, then says that it is ready', async () => {
    const first = await watch()
    first.close()
    await addCustomer(shop, { name: 'Missed One' })
    const second = await openStream(port, cookie, first.seen.at(-1)?.id)
    streams.push(second)
    const seen = await second.until((all) => all.some(({ event }) => event === 'ready'))
    expect(seen.map(({ event }) => event)).toEqual(['change', 'ready'])
  })

  it.each([
    ['an id that never was one', () => 'yesterday'],
    ['an id of another generation, as after a restore', () => `${crypto.randomUUID()}.1.1`],
  ])('asks for everything to be read anew at %s', async (_case, lastId) => {
    const stream = await watch(lastId())
    expect(stream.seen[0]?.event).toBe('resync')
  })

  it('asks for everything to be read anew when more than 500 were missed', async () => {
    const first = await watch()
    first.close()
    await shop.pool.query(`INSERT INTO event (kind) SELECT 'many' FROM generate_series(1, 501)`)
    await expect.poll(async () => (await watch(first.seen.at(-1)?.id)).seen[0]?.event).toBe('resync')
  })

  it('tells every open stream to read anew when the shop was restored to another generation', async () => {
    const stream = await watch()
    const superuser = new pg.Client({ connectionString: shop.database.superuserUrl })
    await superuser.connect()
    await superuser.query('UPDATE shop SET generation = gen_random_uuid()')
    await superuser.end()
    await stream.until((seen) => seen.some(({ event }) => event === 'resync'))
  })

  it('finds within seconds what a process that died did not announce', async () => {
    const stream = await watch()
    await shop.pool.query(`INSERT INTO event (kind) VALUES ('never-announced')`)
    await stream.until((seen) => seen.some(({ data }) => data.kind === 'never-announced'), 5_000)
  })

  it('ends when the service closes', async () => {
    const other = await startShop()
    const otherCookie = await signInCookie(other.app, other.people.owner)
    const stream = await openStream((other.app.server.address() as AddressInfo).port, otherCookie)
    await stream.until((seen) => seen.length > 0)
    const stopped = other.stop()
    await stream.ended
    await stopped
  })
})
