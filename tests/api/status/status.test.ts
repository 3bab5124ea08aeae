import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { addCustomer, key, openJob, startShop, type OpenedJob, type TestShop } from '../../support/shop.ts'

let shop: TestShop
let job: OpenedJob
let clock = new Date()
beforeAll(async () => {
  shop = await startShop({ now: () => clock })
  const customerId = await addCustomer(shop, { name: 'Rosa Piston', phone: '555 010 4477', email: 'rosa@example.test' })
  job = await openJob(shop, { customerId, notes: 'Owes us 1200', wanted: 'Cheap and quick' })
  await openJob(shop, { customerId: await addCustomer(shop, { name: 'Otto Neighbour' }) })
})
afterAll(() => shop.stop())

const look = (path: string) => shop.anonymous().get(`/api/status/${path.slice(3)}`)

async function newLink(): Promise<{ id: string; path: string }> {
  return (await shop.as('counter').post(`/api/jobs/${job.id}/status-links`).set(key()).send({}).expect(201)).body
}

describe('a status link', () => {
  it('shows how far the job is and what the shop chose to say, without sign-in', async () => {
    const text = 'Your crank is straight.'
    await shop.as('counter').post(`/api/jobs/${job.id}/customer-notes`).set(key()).send({ id: randomUUID(), text }).expect(201)
    const { body } = await look(job.statusPath).expect(200)
    expect(body).toMatchObject({
      shopName: 'Test shop', jobNumber: job.number, engineName: 'Test V8', promisedOn: '2031-05-30', stage: 'intake',
      percent: 0, finished: false, notes: [{ text }], timeZone: 'America/Chicago',
    })
    expect(body.stages[0]).toMatchObject({ stage: 'intake', signed: 0 })
    expect(body.sealHead).toMatch(/^[0-9a-f]{64}$/)
  })

  it('shows nothing of people, money, notes of the shop, or other jobs', async () => {
    const { text } = await look(job.statusPath).expect(200)
    for (const secret of ['Rosa', '555', 'example.test', 'Owes', 'Cheap', 'Otto', 'Ada', job.id]) expect(text).not.toContain(secret)
  })

  it('counts progress by signed operations', async () => {
    await shop.pool.query(`UPDATE operation_state SET state = 'signed' WHERE job_id = $1 AND stage = 'intake'`, [job.id])
    const { body } = await look(job.statusPath).expect(200)
    expect(body.stage).toBe('inspection')
    expect(body.percent).toBeGreaterThan(0)
    await shop.pool.query(`UPDATE operation_state SET state = 'signed' WHERE job_id = $1`, [job.id])
    expect((await look(job.statusPath).expect(200)).body).toMatchObject({ stage: null, percent: 100, finished: false })
  })

  it('is revoked at once, and the others of the job stay good', async () => {
    const link = await newLink()
    await look(link.path).expect(200)
    await shop.as('counter').post(`/api/status-links/${link.id}/revocation`).set(key()).send({}).expect(200)
    await look(link.path).expect(404)
    await look(job.statusPath).expect(200)
    const { body } = await shop.as('owner').get(`/api/jobs/${job.number}`).expect(200)
    expect(body.links.map(({ revokedAt }: { revokedAt: string | null }) => revokedAt === null)).toEqual([true, false])
  })

  it('that is unknown, revoked or lapsed answers one and the same', async () => {
    const revoked = await newLink()
    await shop.as('counter').post(`/api/status-links/${revoked.id}/revocation`).set(key()).send({}).expect(200)
    const lapsing = await newLink()
    clock = new Date(Date.now() + 500 * 86_400_000)
    const answers = [await look('/s/made-up'), await look(revoked.path), await look(lapsing.path)]
    clock = new Date()
    const seen = answers.map(({ status, body: { requestId: _id, ...body }, headers }) => ({
      status, body, cache: headers['cache-control'], robots: headers['x-robots-tag'], referrer: headers['referrer-policy'],
    }))
    expect(new Set(seen.map((each) => JSON.stringify(each))).size).toBe(1)
    expect(seen[0]).toMatchObject({
      status: 404, body: { code: 'not-found' }, cache: 'no-store', robots: 'noindex, nofollow', referrer: 'no-referrer',
    })
  })

  it('cannot be told from the database: no token lies there, and another key gives other tokens', async () => {
    const { rows } = await shop.pool.query<{ all: string }>(
      `SELECT string_agg(encode(secret, 'hex') || token_hash || status_link::text, ' ') AS all FROM status_link`,
    )
    expect(rows[0]?.all).not.toContain(job.statusPath.slice(3))
    const { readLinks } = await import('../../../apps/api/src/status/links.ts')
    const [guessed] = await readLinks(shop.pool, job.id, '00'.repeat(32))
    expect(guessed?.path).not.toBe(job.statusPath)
  })
})
