import { randomUUID } from 'node:crypto'
import type { FastifyInstance } from 'fastify'
import type pg from 'pg'
import supertest from 'supertest'
import { v7 as newKey } from 'uuid'
import { createApp, type AppOptions } from '../../apps/api/src/app.ts'
import { createPool } from '../../apps/api/src/database/pool.ts'
import { createTestDatabase, type TestDatabase } from './database.ts'
import { stock, testPeople, testSecrets, type Stock, type TestPerson, type Who } from './stock.ts'

export type Agent = ReturnType<typeof supertest.agent>

export interface TestShop extends Stock {
  readonly app: FastifyInstance
  /** Where it listens, such as `http://127.0.0.1:40000`. */
  readonly address: string
  readonly database: TestDatabase
  /** Connections of the service's login. */
  readonly pool: pg.Pool
  readonly people: Readonly<Record<Who, TestPerson>>
  /** An agent signed in as the person of that role. */
  as(who: Who): Agent
  /** Somebody who is not signed in. */
  anonymous(): Agent
  stop(): Promise<void>
}

/** A fresh idempotency key for one command: `.set(key())`. */
export function key(value: string = newKey()): { 'idempotency-key': string } {
  return { 'idempotency-key': value }
}

export interface ShopOptions {
  readonly now?: () => Date
  readonly timeZone?: string
  /** The built pages, for a browser; without them only the API answers. */
  readonly pages?: NonNullable<AppOptions['pages']>
}

/** A shop of one's own on a database of one's own: people, benches, gauges and engines, and not one job. */
export async function startShop({ now, pages, timeZone = 'America/Chicago' }: ShopOptions = {}): Promise<TestShop> {
  const database = await createTestDatabase()
  const pool = createPool(database.serviceUrl)
  const stocked = await stock(pool, timeZone)
  const app = await createApp({ pool, secrets: testSecrets, logLevel: 'fatal', ...(now && { now }), ...(pages && { pages }) })
  const address = await app.listen({ host: '127.0.0.1', port: 0 })
  const agents = await signEverybodyIn(app)
  return {
    app, address, database, pool, ...stocked, people: testPeople,
    as: (who) => agents[who],
    anonymous: () => supertest.agent(app.server),
    async stop() {
      await app.close()
      await pool.end()
      await database.drop()
    },
  }
}

async function signEverybodyIn(app: FastifyInstance): Promise<Record<Who, Agent>> {
  const entries = await Promise.all(Object.entries(testPeople).map(async ([who, { signInName, password }]) => {
    const agent = supertest.agent(app.server)
    await agent.post('/api/sign-in').send({ signInName, password }).expect(200)
    return [who, agent] as const
  }))
  return Object.fromEntries(entries) as Record<Who, Agent>
}

/** The body that opens a job, ready for the counter to send; `changes` override it. */
export function jobWanted(shop: TestShop, customerId: string, changes: Record<string, unknown> = {}): Record<string, unknown> {
  return {
    id: randomUUID(), customerId, modelId: shop.models['Test V8'], serial: 'T-0001', duty: 'hard-boost', work: 'short-block',
    wanted: 'Freshen it up', notes: '', promisedOn: '2031-05-30', parts: null,
    options: { alignHone: false, deck: false, oversize: true, crank: 'polish', newRodBolts: false, balance: false },
    intake: [{ id: randomUUID(), description: 'Block with caps', quantity: 1, condition: 'rusty', ownedBy: 'customer' }],
    ...changes,
  }
}

/** Adds a customer at the counter. */
export async function addCustomer(shop: TestShop, fields: Record<string, unknown> = {}): Promise<string> {
  const body = { id: randomUUID(), name: 'Rosa Piston', phone: '+1 (555) 010-4477', email: 'rosa@example.test', ...fields }
  await shop.as('counter').post('/api/customers').set(key()).send(body).expect(201)
  return String(body.id)
}

export interface OpenedJob {
  readonly id: string
  readonly number: number
  readonly statusPath: string
}

/** Opens a job at the counter, for a new customer unless one is named. */
export async function openJob(shop: TestShop, changes: Record<string, unknown> = {}): Promise<OpenedJob> {
  const customerId = typeof changes['customerId'] === 'string' ? changes['customerId'] : await addCustomer(shop)
  const answer = await shop.as('counter').post('/api/jobs').set(key()).send(jobWanted(shop, customerId, changes)).expect(201)
  return answer.body as OpenedJob
}
