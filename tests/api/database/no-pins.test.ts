import { createHash, createHmac } from 'node:crypto'
import type { FastifyInstance } from 'fastify'
import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createApp } from '../../../apps/api/src/app.ts'
import { drawCode } from '../../support/bench-device.ts'
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

/** What a million PINs would be looked up by: fast hashes of a PIN, plain, with what lies about, or keyed. */
function fastHashes(pin: string, personId: string): string[] {
  const inputs = [pin, `${pin}\n`, JSON.stringify(pin), JSON.stringify({ pin }), `${personId}${pin}`, `${personId}:${pin}`, `${pin}${personId}`]
  const algorithms = ['md5', 'sha1', 'sha256', 'sha512']
  const keys = [testSecrets.pinPepper, Buffer.from(testSecrets.pinPepper, 'hex'), personId]
  const digests = algorithms.flatMap((algorithm) => inputs.flatMap((input) => [
    createHash(algorithm).update(input).digest(),
    ...keys.map((secret) => createHmac(algorithm, secret).update(input).digest()),
  ]))
  return digests.flatMap((digest) => [digest.toString('hex'), digest.toString('base64'), digest.toString('base64url')])
}

/** A tablet that became a bench device of this service. */
async function enrolled(app: FastifyInstance, owner: ReturnType<typeof supertest.agent>) {
  const code = drawCode()
  const body = { id: crypto.randomUUID(), name: 'Tablet', benchId: shop.benches['hone'], secret: code }
  await owner.post('/api/devices').set(key()).send(body).expect(201)
  const tablet = supertest.agent(app.server)
  await tablet.post('/api/device/enrolment').send({ secret: code }).expect(200)
  return { tablet, code }
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
      const pins = { added: '860214', changed: '970325', signed: '481516', typedWrong: '735264' }
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
      const device = await enrolled(app, owner)
      const take = (pin: string) => device.tablet.post('/api/device/take-over').send({ personId: added.id, pin })
      expect((await take(pins.typedWrong)).body.code).toBe('pin-wrong')
      const taken = await take(pins.added).expect(200)
      expect(JSON.stringify([taken.body, taken.headers])).not.toContain(pins.added)

      const text = `${await dump()}\n${log.join('')}`
      expect(text).toContain('$argon2id$')
      for (const pin of Object.values(pins)) {
        // Six digits may lie by chance within a hash or a fraction of a second: a PIN stands by itself.
        expect(text).not.toMatch(new RegExp(`(?<![\\w.])${pin}(?!\\w)`))
        for (const personId of [shop.people.owner.id, added.id]) {
          for (const hash of fastHashes(pin, personId)) expect(text).not.toContain(hash)
        }
      }
      for (const secret of [password, added.password, testSecrets.pinPepper, device.code]) expect(text).not.toContain(secret)
    } finally {
      await app.close()
    }
  })
})
