import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { key, openJob, startShop, type OpenedJob, type TestShop } from '../../support/shop.ts'

let shop: TestShop
let job: OpenedJob
beforeAll(async () => {
  shop = await startShop()
  job = await openJob(shop)
})
afterAll(() => shop.stop())

const read = async (who: 'counter' | 'machinist' = 'counter') => (await shop.as(who).get(`/api/jobs/${job.number}`).expect(200))

describe('changing a job', () => {
  const change = (ifMatch: string | null, promisedOn: string) => {
    const request = shop.as('counter').put(`/api/jobs/${job.id}`).set(key())
    if (ifMatch !== null) void request.set('if-match', ifMatch)
    return request.send({ promisedOn, wanted: 'Also balance it', notes: 'Call before noon' })
  }

  it('takes the version that was read and answers the next', async () => {
    expect((await read()).headers['etag']).toBe('"1"')
    expect((await change(null, '2031-06-10').expect(428)).body.code).toBe('version-missing')
    expect((await change('"1"', '2031-06-10').expect(200)).body).toEqual({ version: 2 })
    expect((await read()).body).toMatchObject({ promisedOn: '2031-06-10', wanted: 'Also balance it', version: 2 })
  })

  it('refuses a stale edit and keeps the other one', async () => {
    expect((await change('"1"', '2031-07-01').expect(412)).body.code).toBe('edit-stale')
    expect((await read()).body.promisedOn).toBe('2031-06-10')
  })

  it('is refused once the job is handed over', async () => {
    const closed = await openJob(shop)
    await shop.pool.query(`UPDATE job SET state = 'handed-over', handed_over_at = now() WHERE id = $1`, [closed.id])
    const answer = await shop.as('counter').put(`/api/jobs/${closed.id}`).set(key()).set('if-match', '"1"')
      .send({ promisedOn: '2031-06-10', wanted: '', notes: '' }).expect(409)
    expect(answer.body.code).toBe('job-closed')
  })
})

describe('what a machinist sees of a job', () => {
  it('is everything but how to reach the customer and the links to their page', async () => {
    const [atTheCounter, atTheBench] = [(await read()).body, (await read('machinist')).body]
    expect(atTheCounter.customer).toMatchObject({ name: 'Rosa Piston', phone: '+1 (555) 010-4477' })
    expect(atTheCounter.links).toHaveLength(1)
    expect(atTheBench).toEqual({ ...atTheCounter, customer: null, links: [] })
  })
})

describe('the tag', () => {
  it('names the job and carries a code that leads to its page behind the sign-in, not to the customer’s', async () => {
    const { body } = await shop.as('counter').get(`/api/jobs/${job.number}/tag`).expect(200)
    expect(body).toMatchObject({ number: job.number, customerName: 'Rosa Piston', engineName: 'Test V8', promisedOn: '2031-06-10' })
    expect(body.address).toMatch(new RegExp(`^http://127\\.0\\.0\\.1:\\d+/jobs/${job.number}$`))
    expect(body.qr).toMatch(/^<svg [^>]+>.*<\/svg>\s*$/s)
    expect(body.qr).not.toMatch(/<script|href/)
    await shop.as('counter').get('/api/jobs/4040/tag').expect(404)
  })
})

describe('what the customer is told', () => {
  it('is written by the counter, seen by the shop, and can be taken off the page again', async () => {
    const note = { id: randomUUID(), text: 'The crack test found nothing.' }
    const told = await shop.as('counter').post(`/api/jobs/${job.id}/customer-notes`).set(key()).send(note).expect(201)
    expect(told.body).toMatchObject({ ...note, writtenBy: 'Ada Counter' })
    expect((await read()).body.customerNotes).toEqual([told.body])
    await shop.as('counter').post(`/api/customer-notes/${note.id}/withdrawal`).set(key()).send({}).expect(200)
    expect((await read()).body.customerNotes).toEqual([])
    await shop.as('counter').post(`/api/customer-notes/${randomUUID()}/withdrawal`).set(key()).send({}).expect(404)
  })
})
