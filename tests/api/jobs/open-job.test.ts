import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { addCustomer, jobWanted, key, openJob, startShop, type TestShop } from '../../support/shop.ts'

let shop: TestShop
beforeAll(async () => { shop = await startShop() })
afterAll(() => shop.stop())

describe('opening a job at the counter', () => {
  it('gives it a number, a plan, marked parts, what came in and a link for its customer', async () => {
    const opened = await openJob(shop)
    expect(opened.number).toBeGreaterThan(1000)
    expect(opened.statusPath).toMatch(/^\/s\/[\w-]{43}$/)
    const { body: job } = await shop.as('counter').get(`/api/jobs/${opened.number}`).expect(200)
    expect(job).toMatchObject({
      number: opened.number, customerName: 'Rosa Piston', engineName: 'Test V8', duty: 'hard-boost', state: 'open',
      stage: 'intake', signed: 0, planRevision: 1, sealCount: 1, version: 1, late: false,
      intake: [{ description: 'Block with caps', quantity: 1, condition: 'rusty', ownedBy: 'customer' }],
      links: [{ path: opened.statusPath, revokedAt: null }],
    })
    expect(job.route.map((operation: { key: string }) => operation.key)).toContain('hone-bores')
    expect(job.operations).toBe(job.route.length)
    const pistons = job.parts.filter((part: { kind: string }) => part.kind === 'piston')
    expect(pistons.map((part: { place: string }) => part.place)).toContain('piston/3')
    expect(pistons).toHaveLength(8)
    expect(pistons[0].history).toHaveLength(1)
  })

  it('refuses an engine that cannot exist, at the field to blame, and keeps nothing of the job', async () => {
    const customerId = await addCustomer(shop)
    const { body: { models } } = await shop.as('counter').get('/api/engine-models').expect(200)
    const { parts } = models.find((model: { name: string }) => model.name === 'Test V8')
    const body = jobWanted(shop, customerId, { parts: { ...parts, rod: { ...parts.rod, length: 20_000_000 } } })
    const answer = await shop.as('counter').post('/api/jobs').set(key()).send(body).expect(422)
    expect(answer.headers['content-type']).toMatch('application/problem+json')
    expect(answer.body).toMatchObject({ code: 'engine-impossible', field: 'parts.rod.length', status: 422 })
    const { rows } = await shop.pool.query('SELECT 1 FROM job WHERE id = $1', [body['id']])
    expect(rows).toEqual([])
  })

  it('names an unknown customer or engine', async () => {
    const customerId = await addCustomer(shop)
    const nobody = jobWanted(shop, crypto.randomUUID())
    expect((await shop.as('counter').post('/api/jobs').set(key()).send(nobody).expect(404)).body.field).toBe('customerId')
    const nothing = jobWanted(shop, customerId, { modelId: crypto.randomUUID() })
    expect((await shop.as('counter').post('/api/jobs').set(key()).send(nothing).expect(404)).body.field).toBe('modelId')
  })
})
