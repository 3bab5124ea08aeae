import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { key, startShop, type TestShop } from '../../support/shop.ts'

let shop: TestShop
beforeAll(async () => { shop = await startShop() })
afterAll(() => shop.stop())

const newcomer = () => ({
  id: randomUUID(), name: 'Finn Newcomer', signInName: `Finn-${randomUUID()}`, password: 'ten letters and more', pin: '135791',
  roles: ['machinist', 'counter', 'machinist'],
})

describe('people of the shop', () => {
  it('are listed for choosing who signs, without names to sign in with', async () => {
    const { body } = await shop.as('machinist').get('/api/people').expect(200)
    expect(body.people.map(({ name }: { name: string }) => name)).toEqual([
      'Ada Counter', 'Ben Machinist', 'Cleo Machinist', 'Dora Owner',
    ])
    expect(Object.keys(body.people[0]).sort()).toEqual(['hasPin', 'id', 'name', 'roles'])
  })

  it('are added by the owner and can sign in at once', async () => {
    const body = newcomer()
    const added = await shop.as('owner').post('/api/people').set(key()).send(body).expect(201)
    expect(added.body).toEqual({ id: body.id, name: 'Finn Newcomer', hasPin: true, roles: ['counter', 'machinist'] })
    const { signInName, password } = body
    await shop.anonymous().post('/api/sign-in').send({ signInName, password }).expect(200)
  })

  it('cannot share a sign-in name', async () => {
    const body = newcomer()
    await shop.as('owner').post('/api/people').set(key()).send(body).expect(201)
    const twin = { ...body, id: randomUUID(), signInName: body.signInName.toUpperCase() }
    const refused = await shop.as('owner').post('/api/people').set(key()).send(twin).expect(409)
    expect(refused.body).toMatchObject({ code: 'already-exists', field: 'signInName' })
  })
})
