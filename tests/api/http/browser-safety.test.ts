import type { FastifyInstance } from 'fastify'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createApp } from '../../../apps/api/src/app.ts'
import { openJob, startShop, type OpenedJob, type TestShop } from '../../support/shop.ts'
import { testSecrets } from '../../support/stock.ts'

let shop: TestShop
let job: OpenedJob
/** The same shop as a public address sees it, with its pages and its log. */
let published: FastifyInstance
const log: string[] = []
beforeAll(async () => {
  shop = await startShop()
  job = await openJob(shop)
  published = await createApp({
    pool: shop.pool, secrets: testSecrets, origin: 'https://shop.example', logLevel: 'debug',
    logStream: { write: (line) => void log.push(line) },
    pages: (_request, response) => void response.end('a page'),
  })
})
afterAll(async () => {
  await published.close()
  await shop.stop()
})

const signIn = (headers: Record<string, string>, app = published) => app.inject({
  method: 'POST', url: '/api/sign-in', headers, payload: { signInName: 'owner', password: shop.people.owner.password },
})

describe('a page of another site', () => {
  it.each([
    ['the browser says cross-site', { 'sec-fetch-site': 'cross-site' }],
    ['the origin is another host', { origin: 'https://evil.example' }],
    ['the origin is another port', { origin: 'https://shop.example:8443' }],
    ['the origin is hidden', { origin: 'null' }],
  ])('cannot change anything here: %s', async (_case, headers) => {
    const answer = await signIn({ host: 'shop.example', ...headers })
    expect([answer.statusCode, answer.json().code]).toEqual([403, 'not-allowed'])
    const page = await published.inject({ method: 'POST', url: '/sign-in', headers: { host: 'shop.example', ...headers } })
    expect(page.statusCode).toBe(403)
  })

  it('is told from a page of ours', async () => {
    const ours = await signIn({ host: 'shop.example', origin: 'https://shop.example', 'sec-fetch-site': 'same-origin' })
    expect(ours.statusCode).toBe(200)
    const behindProxy = await signIn({ host: '10.0.0.7:4310', origin: 'https://shop.example' })
    expect(behindProxy.statusCode).toBe(200)
    expect(behindProxy.cookies[0]).toMatchObject({ secure: true, httpOnly: true, sameSite: 'Lax' })
  })
})

describe('headers', () => {
  it('narrow what a page may do, on data, pages and problems alike', async () => {
    for (const url of ['/api/me', '/api/nothing', '/sign-in']) {
      const { headers } = await published.inject({ method: 'GET', url })
      expect(headers, url).toMatchObject({
        'x-content-type-options': 'nosniff', 'x-frame-options': 'DENY', 'referrer-policy': 'same-origin',
        'cross-origin-opener-policy': 'same-origin', 'strict-transport-security': 'max-age=31536000',
      })
      expect(headers['request-id']).toMatch(/^[0-9a-f-]{36}$/)
    }
    const data = await published.inject({ method: 'GET', url: '/api/me' })
    expect(data.headers).toMatchObject({
      'cache-control': 'no-store', 'content-security-policy': "default-src 'none'; frame-ancestors 'none'",
    })
  })

  it('keep the customer’s page out of every cache and index, and its address from the next site', async () => {
    for (const url of [job.statusPath, `/api/status/${job.statusPath.slice(3)}`, '/api/status/unknown']) {
      const { headers } = await published.inject({ method: 'GET', url })
      expect(headers, url).toMatchObject({
        'cache-control': 'no-store', 'referrer-policy': 'no-referrer', 'x-robots-tag': 'noindex, nofollow',
      })
    }
  })
})

describe('the log', () => {
  it('holds no password, no session, no token of a status link and no customer’s name', async () => {
    log.length = 0
    const token = job.statusPath.slice(3)
    const session = (await signIn({ host: 'shop.example' })).cookies[0]?.value ?? ''
    await published.inject({ method: 'GET', url: job.statusPath })
    await published.inject({ method: 'GET', url: `/api/status/${token}` })
    await published.inject({ method: 'GET', url: '/api/customers?search=Rosa', cookies: { tenths_session: session } })
    await published.inject({ method: 'GET', url: `/s/${token}/anything?x=${token}` })
    const text = log.join('')
    expect(log.length).toBeGreaterThan(8)
    expect(text).toContain('/api/status/:token')
    for (const secret of [token, session, shop.people.owner.password, 'Rosa']) expect(text).not.toContain(secret)
  })
})

describe('the customer’s page', () => {
  it('is asked for no more than 120 times a minute from one address', async () => {
    const look = (address: string) => published.inject({
      method: 'GET', url: '/s/made-up', remoteAddress: '127.0.0.1', headers: { 'x-forwarded-for': address },
    })
    for (let round = 0; round < 120; round += 1) expect((await look('203.0.113.9')).statusCode).toBe(200)
    expect((await look('203.0.113.9')).statusCode).toBe(429)
    expect((await look('203.0.113.10')).statusCode).toBe(200)
  })
})
