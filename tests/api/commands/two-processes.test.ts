import { randomUUID } from 'node:crypto'
import pg from 'pg'
import { v7 as newKey } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { startApiProcess, type ApiProcess } from '../../support/api-processes.ts'
import { signInCookie } from '../../support/event-stream.ts'
import { startShop, type TestShop } from '../../support/shop.ts'

let shop: TestShop
let cookie: string
/** The ones still alive: each killing leaves one fewer. */
let alive: ApiProcess[]
beforeAll(async () => {
  shop = await startShop()
  cookie = await signInCookie(shop.app, shop.people.counter)
  const start = (name: string) => startApiProcess(shop.database.serviceUrl, name)
  alive = await Promise.all([start('process one'), start('process two'), start('process three')])
})
beforeEach(clearEvents)
afterAll(async () => {
  await Promise.all(alive.map((each) => each.stop()))
  await shop.stop()
})

interface Answer { status: number; body: string; isReplay: boolean }

/** One POST; null when the process died before it answered. */
async function post(process: ApiProcess, value: string, body: object): Promise<Answer | null> {
  try {
    const answer = await fetch(`http://127.0.0.1:${process.port}/api/customers`, {
      method: 'POST', body: JSON.stringify(body),
      headers: { cookie, 'content-type': 'application/json', 'idempotency-key': value },
    })
    return { status: answer.status, body: await answer.text(), isReplay: answer.headers.get('idempotent-replay') === 'true' }
  } catch {
    return null
  }
}

const twenty = (processes: readonly ApiProcess[], value: string, body: object) =>
  Promise.all(Array.from({ length: 20 }, (_, index) => post(processes[index % processes.length] as ApiProcess, value, body)))

/** One customer, one event, one stored answer; every retry of all twenty is answered with that one. */
async function expectOneEffect(survivor: ApiProcess, value: string, body: { id: string; name: string }): Promise<void> {
  const retries = await twenty([survivor], value, body)
  expect(retries.map((answer) => answer?.status)).toEqual(Array(20).fill(201))
  const { rows } = await shop.pool.query<{ body: string; customers: number; events: number }>(
    `SELECT body, (SELECT count(*)::int FROM customer WHERE id = $2) AS customers,
            (SELECT count(*)::int FROM event) AS events
     FROM command_answer WHERE key = $1`,
    [value, body.id],
  )
  expect(rows).toHaveLength(1)
  expect(rows[0]).toMatchObject({ customers: 1, events: 1 })
  for (const retry of retries) expect(JSON.parse(retry?.body ?? '')).toEqual(JSON.parse(rows[0]?.body ?? ''))
}

const customer = () => ({ id: randomUUID(), name: 'Twenty Times', phone: '', email: '' })

describe('twenty equal POSTs over two API processes', () => {
  it('have one effect and one answer', async () => {
    const [one, other] = alive as [ApiProcess, ApiProcess]
    const value = newKey()
    const body = customer()
    const answers = await twenty([one, other], value, body)
    expect(answers.map((answer) => answer?.status)).toEqual(Array(20).fill(201))
    expect(new Set(answers.map((answer) => answer?.body)).size).toBe(1)
    expect(answers.filter((answer) => answer?.isReplay === false)).toHaveLength(1)
    await expectOneEffect(one, value, body)
  })

  it('the one that won killed before it commits, give one effect and one stored answer on every retry', async () => {
    const pair = alive.slice(0, 2)
    const value = newKey()
    const body = customer()
    const release = await lockCustomers()
    const sent = twenty(pair, value, body)
    const winner = await whoWaitsForTheTable()
    await winner.kill()
    alive = alive.filter((each) => each !== winner)
    await release()
    const answers = await sent
    expect(answers.filter((answer) => answer === null)).toHaveLength(10)
    expect(answers.filter((answer) => answer?.status === 201)).toHaveLength(10)
    expect(answers.filter((answer) => answer?.isReplay === false)).toHaveLength(1)
    await expectOneEffect(alive[0] as ApiProcess, value, body)
  })

  it('the one that won killed before it answers, give one effect and one stored answer on every retry', async () => {
    const [one, other] = alive as [ApiProcess, ApiProcess]
    await Promise.all([one.dieAfterCommit(), other.dieAfterCommit()])
    const value = newKey()
    const body = customer()
    const answers = await twenty([one, other], value, body)
    // The winner took whatever it had not answered with it: at least the one that won, though another of its ten, which
    // waited for that one's commit, may have got out before it died. The other one's ten are answered with what it left.
    const whoLeftUnanswered = new Set(answers.flatMap((answer, index) => answer === null ? [index % 2 === 0 ? one : other] : []))
    expect(whoLeftUnanswered.size).toBe(1)
    alive = alive.filter((each) => !whoLeftUnanswered.has(each))
    expect(answers.filter((answer) => answer?.isReplay === false)).toHaveLength(0)
    expect(answers.filter((answer) => answer?.status === 201).length).toBeGreaterThanOrEqual(10)
    await expectOneEffect(alive[0] as ApiProcess, value, body)
  })
})

/** Lets no command add a customer until it is released. */
async function lockCustomers(): Promise<() => Promise<void>> {
  const owner = new pg.Client({ connectionString: shop.database.ownerUrl })
  await owner.connect()
  await owner.query('BEGIN')
  await owner.query('LOCK TABLE customer IN EXCLUSIVE MODE')
  return () => owner.end()
}

/** The process whose command holds the key and stands before the locked table. */
async function whoWaitsForTheTable(): Promise<ApiProcess> {
  const superuser = new pg.Client({ connectionString: shop.database.superuserUrl })
  await superuser.connect()
  try {
    return await vi.waitFor(async () => {
      const { rows } = await superuser.query<{ name: string }>(
        `SELECT application_name AS name FROM pg_stat_activity
         WHERE datname = current_database() AND wait_event_type = 'Lock' AND wait_event = 'relation'`,
      )
      const found = alive.find(({ name }) => name === rows[0]?.name)
      if (found === undefined) throw new Error('Nobody waits for the table yet.')
      return found
    }, { timeout: 8_000, interval: 50 })
  } finally {
    await superuser.end()
  }
}

/** Events are append only to the service: the owner of the tables clears them, so that each test can count its own. */
async function clearEvents(): Promise<void> {
  const owner = new pg.Client({ connectionString: shop.database.ownerUrl })
  await owner.connect()
  await owner.query('TRUNCATE event')
  await owner.end()
}
