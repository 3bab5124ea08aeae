import { randomUUID } from 'node:crypto'
import { v7 as newKey } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { forgetOldAnswers } from '../../../apps/api/src/commands/forget-old-answers.ts'
import { addCustomer, jobWanted, key, openJob, startShop, type TestShop } from '../../support/shop.ts'

let shop: TestShop
beforeAll(async () => { shop = await startShop() })
afterAll(() => shop.stop())

const customer = (name: string) => ({ id: randomUUID(), name, phone: '', email: '' })
const post = (body: object, value: string, who: 'counter' | 'owner' = 'counter') =>
  shop.as(who).post('/api/customers').set(key(value)).send(body)

async function count(table: 'customer' | 'event' | 'command_answer' | 'job'): Promise<number> {
  const { rows } = await shop.pool.query<{ count: number }>(`SELECT count(*)::int AS count FROM ${table}`)
  return rows[0]?.count ?? -1
}

describe('the same request sent twice', () => {
  it('has one effect, one event and one answer', async () => {
    const body = customer('Once Only')
    const value = newKey()
    const events = await count('event')
    const first = await post(body, value).expect(201)
    const second = await post(body, value).expect(201)
    expect(second.body).toEqual(first.body)
    expect(first.headers['idempotent-replay']).toBeUndefined()
    expect(second.headers['idempotent-replay']).toBe('true')
    expect(await count('event')).toBe(events + 1)
    const { rows } = await shop.pool.query('SELECT 1 FROM customer WHERE name = $1', [body.name])
    expect(rows).toHaveLength(1)
  })

  it('has one effect and one answer when twenty come at once', async () => {
    const customerId = await addCustomer(shop)
    const body = jobWanted(shop, customerId)
    const value = newKey()
    const before = { jobs: await count('job'), events: await count('event') }
    const answers = await Promise.all(
      Array.from({ length: 20 }, () => shop.as('counter').post('/api/jobs').set(key(value)).send(body)),
    )
    expect(answers.map(({ status }) => status)).toEqual(Array(20).fill(201))
    expect(new Set(answers.map(({ text }) => text)).size).toBe(1)
    expect(answers.filter(({ headers }) => headers['idempotent-replay'] === undefined)).toHaveLength(1)
    expect(await count('job')).toBe(before.jobs + 1)
    expect(await count('event')).toBe(before.events + 1)
  })

  it('needs a key, which is a UUID', async () => {
    const without = await shop.as('counter').post('/api/customers').send(customer('No Key')).expect(400)
    expect(without.body.code).toBe('key-missing')
    expect((await post(customer('Odd Key'), 'again').expect(400)).body.code).toBe('key-missing')
  })

  it('is refused when the key was used for another body, another address or by another person', async () => {
    const body = customer('Key Owner')
    const value = newKey()
    await post(body, value).expect(201)
    expect((await post({ ...body, name: 'Somebody Else' }, value).expect(422)).body.code).toBe('key-reused')
    expect((await post(body, value, 'owner').expect(422)).body.code).toBe('key-reused')
    const elsewhere = await shop.as('counter').put(`/api/customers/${body.id}`).set(key(value)).set('if-match', '"1"')
      .send({ name: 'Key Owner', phone: '', email: '' }).expect(422)
    expect(elsewhere.body.code).toBe('key-reused')
  })

  it('counts as the same however its fields are ordered', async () => {
    const { id, name } = customer('Ordered')
    const value = newKey()
    await post({ id, name, phone: '', email: '' }, value).expect(201)
    await post({ email: '', phone: '', name, id }, value).expect(201)
  })

  it('may succeed after it failed: only success is kept', async () => {
    const value = newKey()
    const body = customer('Taken')
    await post(body, newKey()).expect(201)
    const answers = await count('command_answer')
    const events = await count('event')
    expect((await post(body, value).expect(409)).body.code).toBe('already-exists')
    expect([await count('command_answer'), await count('event')]).toEqual([answers, events])
    const { requestId: _id, ...again } = (await post(body, value).expect(409)).body
    expect(again.code).toBe('already-exists')
  })

  it('answers a job’s status link again, though no table holds it', async () => {
    const customerId = await addCustomer(shop)
    const body = jobWanted(shop, customerId)
    const value = newKey()
    const send = () => shop.as('counter').post('/api/jobs').set(key(value)).send(body).expect(201)
    const [first, second] = [await send(), await send()]
    expect(second.body.statusPath).toBe(first.body.statusPath)
    expect(first.body.statusPath).toMatch(/^\/s\/./)
    const link = { value: newKey() }
    const make = () => shop.as('counter').post(`/api/jobs/${first.body.id}/status-links`).set(key(link.value)).send({}).expect(201)
    expect((await make()).body).toEqual((await make()).body)
    const { rows } = await shop.pool.query<{ body: string }>(`SELECT string_agg(body, ' ') AS body FROM command_answer`)
    expect(rows[0]?.body).not.toContain(first.body.statusPath.slice(3))
  })

  it('keeps no hash of a PIN or a password: another PIN is the same request', async () => {
    const value = newKey()
    const { password } = shop.people.second
    const change = (pin: string) => shop.as('second').put('/api/me/pin').set(key(value)).send({ password, pin })
    await change('121212').expect(200)
    expect((await change('343434').expect(200)).headers['idempotent-replay']).toBe('true')
  })
})

describe('a kept answer', () => {
  it('is kept for 90 days and then forgotten', async () => {
    const [old, young] = [newKey(), newKey()]
    await post(customer('Long Ago'), old).expect(201)
    await post(customer('Lately'), young).expect(201)
    const age = (value: string, days: number) =>
      shop.pool.query('UPDATE command_answer SET answered_at = now() - make_interval(days => $2) WHERE key = $1', [value, days])
    await Promise.all([age(old, 91), age(young, 89)])
    await forgetOldAnswers(shop.pool, new Date())
    const { rows } = await shop.pool.query('SELECT key FROM command_answer WHERE key = ANY ($1)', [[old, young]])
    expect(rows).toEqual([{ key: young }])
  })
})

describe('a command that waits too long', () => {
  it('is answered with busy and when to try again, and changes nothing', async () => {
    const job = await openJob(shop)
    const holder = await shop.pool.connect()
    try {
      await holder.query('BEGIN')
      await holder.query('SELECT 1 FROM job WHERE id = $1 FOR UPDATE', [job.id])
      const note = { id: randomUUID(), text: 'Your block is clean.' }
      const waiting = shop.as('counter').post(`/api/jobs/${job.id}/customer-notes`).set(key()).send(note).then((answer) => answer)
      // The holder is not idle meanwhile, or it would be the one to be cut off.
      const awake = setInterval(() => void holder.query('SELECT 1'), 2_000)
      const answer = await waiting
      clearInterval(awake)
      expect([answer.status, answer.body.code]).toEqual([503, 'busy'])
      expect(Number(answer.headers['retry-after'])).toBeGreaterThan(0)
    } finally {
      await holder.query('ROLLBACK')
      holder.release()
    }
  })
})
