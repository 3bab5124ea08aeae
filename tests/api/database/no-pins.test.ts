import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createApp } from '../../../apps/api/src/app.ts'
import { fastHashes, standsAlone } from '../../support/fast-hashes.ts'
import { key, openJob, startShop, type TestShop } from '../../support/shop.ts'
import { testSecrets } from '../../support/stock.ts'

let shop: TestShop
beforeAll(async () => { shop = await startShop() })
afterAll(() => shop.stop())

/** Every row of every table as text, which is what a dump holds. */
async function dump(): Promise<string> {
  const { rows: tables } = await shop.pool.query<{ name: string }>(
    `SELECT quote_ident(relname) AS name FROM pg_class WHERE relnamespace = current_schema()::regnamespace AND relkind = 'r'`,
  )
  const texts = await Promise.all(tables.map(async ({ name }) => {
    const { rows } = await shop.pool.query<{ line: string }>(`SELECT ${name}::text AS line FROM ${name}`)
    return rows.map(({ line }) => line).join('\n')
  }))
  return texts.join('\n')
}

describe('a dump of the database and the log', () => {
  it('contains no PIN nor a fast hash of one', async () => {
    const log: string[] = []
    const app = await createApp({
      pool: shop.pool, secrets: testSecrets, logLevel: 'debug', logStream: { write: (line) => void log.push(line) },
    })
    await app.ready()
    try {
      // PINs travel through every road they have: a new person's, a changed one, a signature right and wrong.
      const job = await openJob(shop)
      const owner = supertest.agent(app.server)
      const { signInName, password } = shop.people.owner
      await owner.post('/api/sign-in').send({ signInName, password }).expect(200)
      const pins = { added: '860214', changed: '970325', signed: '481516' }
      const added = { id: crypto.randomUUID(), name: 'Gil', signInName: 'gil', password: 'ten letters and more', pin: pins.added, roles: ['machinist'] }
      await owner.post('/api/people').set(key()).send(added).expect(201)
      await owner.put('/api/me/pin').set(key()).send({ password, pin: pins.changed }).expect(200)
      const { body: step } = await owner.get(`/api/jobs/${job.number}/operations/receive`).expect(200)
      const sign = (pin: string) => owner.post(`/api/jobs/${job.id}/sign-offs`).set(key()).send({
        id: crypto.randomUUID(), operationKey: 'receive', definitionHash: step.definitionHash,
        signatures: [{ personId: shop.people.owner.id, pin }],
      })
      expect((await sign(pins.signed)).body.code).toBe('pin-wrong')
      expect((await sign(pins.changed)).body.code).not.toBe('pin-wrong')
      await owner.put('/api/me/pin').set(key()).send({ password, pin: 'not six digits' }).expect(400)

      const text = `${await dump()}\n${log.join('')}`
      expect(text).toContain('$argon2id$')
      for (const pin of Object.values(pins)) {
        expect(text).not.toMatch(standsAlone(pin))
        for (const personId of [shop.people.owner.id, added.id]) {
          for (const hash of fastHashes(pin, personId)) expect(text).not.toContain(hash)
        }
      }
      for (const secret of [password, added.password, testSecrets.pinPepper]) expect(text).not.toContain(secret)
    } finally {
      await app.close()
    }
  })
})
