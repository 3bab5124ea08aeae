import type { FastifyInstance } from 'fastify'
import type pg from 'pg'
import supertest from 'supertest'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { createApp } from '../../../apps/api/src/app.ts'
import { createPool } from '../../../apps/api/src/database/pool.ts'
import { createSetupLink } from '../../../apps/api/src/people/set-up.ts'
import { createTestDatabase, type TestDatabase } from '../../support/database.ts'
import { testSecrets } from '../../support/stock.ts'

let database: TestDatabase
let pool: pg.Pool
let app: FastifyInstance
beforeEach(async () => {
  database = await createTestDatabase()
  pool = createPool(database.serviceUrl)
  app = await createApp({ pool, secrets: testSecrets, logLevel: 'fatal' })
  await app.ready()
})
afterEach(async () => {
  await app.close()
  await pool.end()
  await database.drop()
})

const settings = {
  shopName: 'Fresh shop', timeZone: 'Europe/Lisbon', unit: 'millimetre', ownerName: 'Olga Owner', signInName: 'Olga',
  password: 'ten letters and more', pin: '246813',
}

async function secretOf(now = new Date()): Promise<string> {
  const link = await createSetupLink(pool, now)
  expect(link?.path).toBe(`/setup#${link?.secret}`)
  return link?.secret ?? ''
}

describe('setting an empty shop up', () => {
  it('takes the printed link once, signs the owner in, and gives them every role', async () => {
    const secret = await secretOf()
    const agent = supertest.agent(app.server)
    const done = await agent.post('/api/setup').send({ ...settings, secret }).expect(200)
    expect(done.body).toMatchObject({
      name: 'Olga Owner', hasPin: true, roles: ['counter', 'machinist', 'owner'],
      shop: { name: 'Fresh shop', timeZone: 'Europe/Lisbon', unit: 'millimetre', isDemo: false },
    })
    await agent.get('/api/me').expect(200)
    const again = await supertest(app.server).post('/api/setup').send({ ...settings, secret }).expect(409)
    expect(again.body.code).toBe('setup-done')
    await supertest(app.server).post('/api/sign-in').send({ signInName: 'olga', password: settings.password }).expect(200)
    expect(await createSetupLink(pool, new Date())).toBeNull()
  })

  it('makes one shop of two that come at once', async () => {
    const secret = await secretOf()
    const answers = await Promise.all(
      [1, 2].map(() => supertest(app.server).post('/api/setup').send({ ...settings, secret })),
    )
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409])
    const { rows } = await pool.query('SELECT (SELECT count(*)::int FROM shop) AS shops, (SELECT count(*)::int FROM person) AS people')
    expect(rows).toEqual([{ shops: 1, people: 1 }])
  })

  it('does not know a link that was made up, has lapsed, or was followed by a newer one', async () => {
    const post = (secret: string) => supertest(app.server).post('/api/setup').send({ ...settings, secret })
    expect((await post('made-up-made-up-made-up').expect(404)).body.code).toBe('not-found')
    const lapsed = await secretOf(new Date(Date.now() - 72 * 3_600_000))
    await post(lapsed).expect(404)
    const older = await secretOf()
    const newer = await secretOf()
    await post(older).expect(404)
    await post(newer).expect(200)
  })

  it('names the field that cannot be used and keeps the link good', async () => {
    const secret = await secretOf()
    const post = (changes: object) => supertest(app.server).post('/api/setup').send({ ...settings, secret, ...changes })
    expect((await post({ timeZone: 'Mars/Olympus' }).expect(400)).body).toMatchObject({ code: 'body-invalid', field: 'timeZone' })
    expect((await post({ pin: '12345' }).expect(400)).body).toMatchObject({ field: 'pin', detail: 'Six digits.' })
    expect((await post({ password: 'short' }).expect(400)).body).toMatchObject({ field: 'password' })
    await post({}).expect(200)
  })

  it('keeps no secret of the link', async () => {
    const secret = await secretOf()
    const { rows } = await pool.query<{ all: string }>('SELECT string_agg(setup_link::text, chr(10)) AS all FROM setup_link')
    expect(rows[0]?.all).not.toContain(secret)
  })
})
