import { eventStream, routes } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createApp } from '../../../apps/api/src/app.ts'
import { createPool } from '../../../apps/api/src/database/pool.ts'
import { register } from '../../../apps/api/src/http/register.ts'
import { createTestDatabase, type TestDatabase } from '../../support/database.ts'
import { testSecrets } from '../../support/stock.ts'

let database: TestDatabase
let pool: pg.Pool
let app: FastifyInstance
beforeAll(async () => {
  database = await createTestDatabase()
  pool = createPool(database.serviceUrl)
  app = await createApp({ pool, secrets: testSecrets, logLevel: 'fatal', pages: (_request, response) => void response.end() })
  await app.ready()
})
afterAll(async () => {
  await app.close()
  await pool.end()
  await database.drop()
})

/** One line for each method of each registered route. */
function registered() {
  return app.registeredRoutes
    .flatMap(({ method, url, config }) => [method].flat().map((verb) => ({ verb, url, ...config })))
    .filter(({ verb }) => verb !== 'HEAD')
}

// These change nothing but the caller's own session, or nothing at all, and each says why where it is registered.
const roundCommand = [
  'POST /api/sign-in', 'POST /api/sign-out', 'POST /api/setup', 'POST /api/jobs/:id/plan/preview',
  'POST /api/device/enrolment', 'POST /api/device/take-over',
]
// What is no JSON stands beside the contract's routes: the stream of changes, the printed build record, a photograph.
const beside = [`${eventStream.method} ${eventStream.path}`, 'GET /api/jobs/:number/build-record.pdf', 'GET /api/photographs/:id']
// Answers *there is nothing here*, and the pages.
const catchAll = ['/api/*', '/*']

describe('the routes', () => {
  it('are those of the contract, each once, and what is no JSON', () => {
    const addresses = registered().filter(({ url }) => !catchAll.includes(url)).map(({ verb, url }) => `${verb} ${url}`)
    const expected = Object.values(routes).map(({ method, path }) => `${method} ${path}`)
    expect(addresses.sort()).toEqual([...expected, ...beside].sort())
  })

  it('that are no JSON are for people who are signed in as well', async () => {
    for (const url of ['/api/events', '/api/jobs/1001/build-record.pdf', `/api/photographs/${crypto.randomUUID()}`]) {
      const answer = await app.inject({ method: 'GET', url })
      expect([answer.statusCode, answer.json().code], url).toEqual([401, 'not-signed-in'])
    }
  })

  it('go through command() wherever they change anything: a mutating route that goes round it fails this test', () => {
    const mutating = registered().filter(({ verb, url }) => !['GET', 'OPTIONS'].includes(verb) && !catchAll.includes(url))
    const round = mutating.filter(({ through }) => through !== 'command').map(({ verb, url }) => `${verb} ${url}`)
    expect(round.sort()).toEqual([...roundCommand].sort())
    expect(mutating.filter(({ through }) => through === 'command').length).toBeGreaterThan(20)
  })

  it('cannot register a command as a read', async () => {
    const other = await createApp({ pool, secrets: testSecrets, logLevel: 'fatal' })
    const command = Object.values(routes).find(({ mutation }) => mutation === 'command')
    if (command === undefined) throw new Error('The contract has commands.')
    expect(() => register(other, command, async () => ({}))).toThrow(/needs command\(\)/)
    await other.close()
  })

  it('answer an unknown address below /api with a problem, never with a page', async () => {
    for (const url of ['/api/nothing', '/api/jobs/1/nothing', '/api/']) {
      const answer = await app.inject({ method: 'GET', url })
      expect([answer.statusCode, answer.headers['content-type']]).toEqual([404, 'application/problem+json; charset=utf-8'])
      expect(answer.json()).toMatchObject({ code: 'not-found', status: 404, requestId: answer.headers['request-id'] })
    }
  })
})
