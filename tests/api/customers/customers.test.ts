import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { addCustomer, key, openJob, startShop, type TestShop } from '../../support/shop.ts'

let shop: TestShop
let rosa: string
beforeAll(async () => {
  shop = await startShop()
  rosa = await addCustomer(shop, { name: 'Rosa Ölander', phone: '+1 (555) 010-4477', email: 'rosa@example.test' })
  await addCustomer(shop, { name: 'Anders Rosander', phone: '555 020 11 22', email: '' })
  await addCustomer(shop, { name: '100% Racing_Team', phone: '', email: '' })
  await openJob(shop, { customerId: rosa })
})
afterAll(() => shop.stop())

async function find(search: string): Promise<string[]> {
  const { body } = await shop.as('counter').get('/api/customers').query({ search }).expect(200)
  return body.customers.map(({ name }: { name: string }) => name)
}

describe('finding a customer while the name is typed', () => {
  it('takes any part of the name, in either case, those that begin with it first', async () => {
    expect(await find('ros')).toEqual(['Rosa Ölander', 'Anders Rosander'])
    expect(await find('ÖLAND')).toEqual(['Rosa Ölander'])
    expect(await find('ander')).toEqual(['Anders Rosander', 'Rosa Ölander'])
    expect(await find('nobody')).toEqual([])
  })

  it('takes any run of the phone’s digits, however they are grouped', async () => {
    expect(await find('0104')).toEqual(['Rosa Ölander'])
    expect(await find('(555) 010')).toEqual(['Rosa Ölander'])
    expect(await find('020-1122')).toEqual(['Anders Rosander'])
    expect(await find('555')).toEqual(['Anders Rosander', 'Rosa Ölander'])
  })

  it('takes signs that mean something to the database as they are', async () => {
    expect(await find('100%')).toEqual(['100% Racing_Team'])
    expect(await find('g_t')).toEqual(['100% Racing_Team'])
    expect(await find('%')).toEqual(['100% Racing_Team'])
    expect(await find('_')).toEqual(['100% Racing_Team'])
    expect(await find('\\')).toEqual([])
    expect(await find(`' OR true --`)).toEqual([])
  })

  it('shows whoever came last when nothing is typed yet, twenty at most, and how many jobs they had', async () => {
    for (let index = 0; index < 20; index += 1) await addCustomer(shop, { name: `Filler ${index}` })
    const { body } = await shop.as('counter').get('/api/customers').expect(200)
    expect(body.customers).toHaveLength(20)
    expect(body.customers[0].name).toBe('Filler 19')
    const found = await shop.as('owner').get('/api/customers?search=%C3%96lander').expect(200)
    expect(found.body.customers[0]).toMatchObject({ id: rosa, jobs: 1, version: 1, phone: '+1 (555) 010-4477' })
  })
})

describe('correcting a customer', () => {
  const change = (ifMatch: string | null, name: string) => {
    const request = shop.as('counter').put(`/api/customers/${rosa}`).set(key())
    if (ifMatch !== null) void request.set('if-match', ifMatch)
    return request.send({ name, phone: '+1 (555) 010-4477', email: '' })
  }

  it('needs the version that was read, and refuses a stale one, so that nobody’s change is lost', async () => {
    expect((await change(null, 'Rosa Oelander').expect(428)).body.code).toBe('version-missing')
    const done = await change('"1"', 'Rosa Oelander').expect(200)
    expect(done.body).toMatchObject({ name: 'Rosa Oelander', version: 2 })
    expect(done.headers['etag']).toBe('"2"')
    const stale = await change('"1"', 'Rosa Somebody').expect(412)
    expect(stale.body.code).toBe('edit-stale')
    expect(await find('Oelander')).toEqual(['Rosa Oelander'])
  })

  it('lets one of two edits win that come at once', async () => {
    const answers = await Promise.all([change('"2"', 'Rosa One'), change('"2"', 'Rosa Two')])
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 412])
  })

  it('does not know a customer who is not there', async () => {
    const answer = await shop.as('counter').put(`/api/customers/${crypto.randomUUID()}`).set(key()).set('if-match', '"1"')
      .send({ name: 'Nobody', phone: '', email: '' }).expect(404)
    expect(answer.body.code).toBe('not-found')
  })
})
