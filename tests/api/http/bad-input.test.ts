import { Problem } from '@tenths/contract'
import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { addCustomer, jobWanted, key, startShop, type TestShop } from '../../support/shop.ts'

let shop: TestShop
let customerId: string
beforeAll(async () => {
  shop = await startShop()
  customerId = await addCustomer(shop)
})
afterAll(() => shop.stop())

const post = (path: string, body: unknown, headers: Record<string, string> = key()) =>
  shop.as('owner').post(path).set(headers).send(body as object)

describe('bad input', () => {
  it('is answered with problem details: a code, a sentence, the field, and a number to ask about', async () => {
    const answer = await post('/api/customers', { id: randomUUID(), name: '', phone: '', email: '' }).expect(400)
    expect(answer.headers['content-type']).toBe('application/problem+json; charset=utf-8')
    expect(Problem.parse(answer.body)).toEqual(answer.body)
    expect(answer.body).toMatchObject({
      type: 'about:blank', title: 'Bad Request', status: 400, code: 'body-invalid', field: 'name', detail: 'This is needed.',
      requestId: answer.headers['request-id'],
    })
  })

  it('names every field to blame, with a sentence for each', async () => {
    const wanted = jobWanted(shop, customerId, {
      promisedOn: '31 May', duty: 'racing', serial: 7, wanted: 'x'.repeat(2001),
      intake: [{ id: randomUUID(), description: 'Crank', quantity: 0, condition: '', ownedBy: 'customer' }],
    })
    const { body } = await post('/api/jobs', wanted).expect(400)
    expect(Object.fromEntries(body.fields.map(({ field, detail }: { field: string; detail: string }) => [field, detail]))).toEqual({
      promisedOn: 'This is not a day of the calendar, written like 2031-04-30.',
      duty: expect.stringMatching(/^This must be one of: street, towing/),
      serial: 'This must be text.',
      wanted: 'This is too long: 2000 characters at most.',
      'intake.0.quantity': 'This must be 1 or more.',
    })
  })

  it('is refused when a day is not in the calendar', async () => {
    const { body } = await post('/api/jobs', jobWanted(shop, customerId, { promisedOn: '2031-02-29' })).expect(400)
    expect(body).toMatchObject({ code: 'body-invalid', field: 'promisedOn' })
  })

  it('is refused when it is not JSON, and when it is a form', async () => {
    const broken = await shop.as('owner').post('/api/customers').set(key()).set('content-type', 'application/json').send('{"name":')
    expect([broken.status, broken.body.code]).toEqual([400, 'body-invalid'])
    const form = await shop.as('owner').post('/api/customers').set(key()).type('form').send({ name: 'Mallory' })
    expect([form.status, form.body.code]).toEqual([400, 'body-invalid'])
    const text = await shop.as('owner').post('/api/customers').set(key()).set('content-type', 'text/plain').send('{"name":"Mallory"}')
    expect([text.status, text.body.code]).toEqual([400, 'body-invalid'])
  })

  it('is refused when too large', async () => {
    const huge = { id: randomUUID(), name: 'x'.repeat(2_000_000), phone: '', email: '' }
    expect((await post('/api/customers', huge)).body.code).toBe('body-invalid')
  })

  it('in an address is named too', async () => {
    const { body } = await shop.as('owner').get('/api/jobs/twelve').expect(400)
    expect(body).toMatchObject({ code: 'body-invalid', field: 'number' })
    const query = await shop.as('owner').get('/api/jobs?page=0').expect(400)
    expect(query.body).toMatchObject({ code: 'body-invalid', field: 'page' })
  })

  it('beyond what the database can hold is refused as well', async () => {
    expect((await shop.as('owner').get('/api/jobs/99999999999').expect(400)).body.code).toBe('body-invalid')
    expect((await shop.as('owner').get('/api/jobs?page=999999999').expect(200)).body.jobs).toEqual([])
  })

  it('is refused for an engine whose rod is shorter than its stroke allows, at the field', async () => {
    const { body: { models } } = await shop.as('owner').get('/api/engine-models').expect(200)
    const { specification, parts } = models.find(({ name }: { name: string }) => name === 'Test inline four')
    const wanted = { id: randomUUID(), name: 'Impossible', specification, parts: { ...parts, rod: { ...parts.rod, length: 40_000_000 } } }
    const { body } = await post('/api/engine-models', wanted).expect(422)
    expect(body).toMatchObject({ code: 'engine-impossible', field: 'parts.rod.length' })
    const wide = { ...parts, rodShell: { ...parts.rodShell, width: 30_000_000 } }
    const bearing = await post('/api/engine-models', { ...wanted, parts: wide }).expect(422)
    expect(bearing.body.code).toBe('engine-impossible')
    const taken = await post('/api/engine-models', { ...wanted, name: 'Test V8', parts }).expect(409)
    expect(taken.body).toMatchObject({ code: 'already-exists', field: 'name' })
  })

  it('never shows what went wrong inside', async () => {
    await shop.pool.query(`INSERT INTO engine_model (id, name, specification, parts) VALUES ($1, 'Broken', '{}', '{}')`, [randomUUID()])
    const { body } = await shop.as('owner').get('/api/engine-models').expect(500)
    expect(body).toMatchObject({ code: 'unexpected', title: 'Internal Server Error' })
    expect(body.detail).not.toMatch(/zod|specification|undefined/i)
  })
})
