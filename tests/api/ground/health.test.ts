import pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { startShop, type TestShop } from '../../support/shop.ts'

let shop: TestShop
beforeAll(async () => { shop = await startShop() })
afterAll(() => shop.stop())

async function asSuperuser(sql: string): Promise<void> {
  const client = new pg.Client({ connectionString: shop.database.superuserUrl })
  await client.connect()
  await client.query(sql)
  await client.end()
}

describe('health', () => {
  it('answers with the newest migration while the schema is current', async () => {
    const { body } = await shop.anonymous().get('/api/health').expect(200)
    expect(body).toMatchObject({ status: 'ok', schema: expect.stringMatching(/^\d{4}_/) })
  })

  it('answers 503 and when to ask again while a migration is missing', async () => {
    await asSuperuser('UPDATE _prisma_migrations SET finished_at = NULL')
    const missing = await shop.anonymous().get('/api/health').expect(503)
    expect(missing.body).toMatchObject({ code: 'busy', detail: 'The database is not yet at this version.' })
    expect(Number(missing.headers['retry-after'])).toBeGreaterThan(0)
    await asSuperuser('UPDATE _prisma_migrations SET finished_at = now()')
    await shop.anonymous().get('/api/health').expect(200)
  })

  it('answers 503 while the schema cannot be read', async () => {
    await asSuperuser('ALTER TABLE _prisma_migrations RENAME TO out_of_reach')
    const { body } = await shop.anonymous().get('/api/health').expect(503)
    expect(body.detail).toBe('The database cannot be reached.')
    await asSuperuser('ALTER TABLE out_of_reach RENAME TO _prisma_migrations')
  })
})
