import supertest from 'supertest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { startShop, type TestShop } from '../../support/shop.ts'

let shop: TestShop
beforeAll(async () => { shop = await startShop() })
afterAll(() => shop.stop())

const signIn = (signInName: string, password: string) =>
  supertest(shop.app.server).post('/api/sign-in').send({ signInName, password })

describe('signing in', () => {
  it('answers who one is, in which shop, and with which judge', async () => {
    const { people } = shop
    const answer = await signIn('Owner', people.owner.password).expect(200)
    expect(answer.body).toEqual({
      id: people.owner.id, name: 'Dora Owner', roles: ['owner'], hasPin: true, judgeVersion: expect.any(Number), device: null,
      shop: { name: 'Test shop', timeZone: 'America/Chicago', unit: 'inch', isDemo: false },
    })
    const me = await shop.as('machinist').get('/api/me').expect(200)
    expect(me.body).toMatchObject({ id: people.machinist.id, roles: ['machinist'] })
  })

  it('says the same of an unknown name as of a wrong password', async () => {
    const wrong = await signIn('machinist', 'not the password').expect(403)
    const unknown = await signIn('nobody', 'not the password').expect(403)
    const { requestId: _one, ...first } = wrong.body
    const { requestId: _two, ...second } = unknown.body
    expect(first).toEqual(second)
    expect(first).toMatchObject({ code: 'sign-in-refused', field: 'password' })
    expect(wrong.headers['set-cookie']).toBeUndefined()
  })

  it('keeps the session in a cookie that no script reads and no other site sends, and a hash of it in the table', async () => {
    const answer = await signIn('machinist', shop.people.machinist.password).expect(200)
    const cookie = String(answer.headers['set-cookie'])
    expect(cookie).toMatch(/HttpOnly/)
    expect(cookie).toMatch(/SameSite=Lax/)
    expect(cookie).toMatch(/Path=\//)
    const secret = /tenths_session=([^;]+)/.exec(cookie)?.[1] ?? ''
    expect(secret.length).toBeGreaterThan(30)
    const { rows } = await shop.pool.query<{ all: string }>('SELECT string_agg(session::text, chr(10)) AS all FROM session')
    expect(rows[0]?.all).not.toContain(secret)
  })

  it('makes the cookie Secure wherever the address is not loopback', async () => {
    const onLoopback = await signIn('second', shop.people.second.password).expect(200)
    expect(String(onLoopback.headers['set-cookie'])).not.toMatch(/Secure/)
    const onTheNetwork = await signIn('second', shop.people.second.password).set('host', 'shop.example').expect(200)
    expect(String(onTheNetwork.headers['set-cookie'])).toMatch(/Secure/)
  })

  it('ends with signing out, for that session alone', async () => {
    const one = supertest.agent(shop.app.server)
    const other = supertest.agent(shop.app.server)
    const { signInName, password } = shop.people.second
    await one.post('/api/sign-in').send({ signInName, password }).expect(200)
    await other.post('/api/sign-in').send({ signInName, password }).expect(200)
    await one.post('/api/sign-out').expect(200)
    expect((await one.get('/api/me').expect(401)).body.code).toBe('not-signed-in')
    await other.get('/api/me').expect(200)
  })

  it('draws a new session each time, so that a planted one is worth nothing', async () => {
    const agent = supertest.agent(shop.app.server)
    const { signInName, password } = shop.people.second
    const first = String((await agent.post('/api/sign-in').send({ signInName, password })).headers['set-cookie'])
    const second = String((await agent.post('/api/sign-in').send({ signInName, password })).headers['set-cookie'])
    const planted = /tenths_session=[^;]+/.exec(first)?.[0] ?? ''
    expect(second).not.toContain(planted)
    await supertest(shop.app.server).get('/api/me').set('cookie', planted).expect(401)
  })

  it('reads roles at each request: a role that is taken away counts no longer at once', async () => {
    const own = await startShop()
    try {
      await own.as('owner').get('/api/findings').expect(200)
      await own.pool.query('DELETE FROM person_role WHERE person_id = $1', [own.people.owner.id])
      await own.pool.query(`INSERT INTO person_role VALUES ($1, 'machinist')`, [own.people.owner.id])
      expect((await own.as('owner').get('/api/findings').expect(403)).body.code).toBe('not-allowed')
    } finally {
      await own.stop()
    }
  })

  it('shuts out at once whoever left the shop', async () => {
    const own = await startShop()
    try {
      await own.pool.query('UPDATE person SET active = false WHERE id = $1', [own.people.counter.id])
      await own.as('counter').get('/api/me').expect(401)
      const { signInName, password } = own.people.counter
      const again = await supertest(own.app.server).post('/api/sign-in').send({ signInName, password }).expect(403)
      expect(again.body.code).toBe('sign-in-refused')
    } finally {
      await own.stop()
    }
  })

  it('lets a session lapse, and prolongs one that is used', async () => {
    const answer = await signIn('second', shop.people.second.password).expect(200)
    const cookie = /tenths_session=[^;]+/.exec(String(answer.headers['set-cookie']))?.[0] ?? ''
    const latest = `id_hash = (SELECT id_hash FROM session ORDER BY created_at DESC LIMIT 1)`
    await shop.pool.query(`UPDATE session SET expires_at = now() + interval '1 day' WHERE ${latest}`)
    await supertest(shop.app.server).get('/api/me').set('cookie', cookie).expect(200)
    const { rows } = await shop.pool.query<{ days: number }>(
      `SELECT extract(day FROM expires_at - now())::int AS days FROM session WHERE ${latest}`,
    )
    expect(rows[0]?.days).toBeGreaterThanOrEqual(13)
    await shop.pool.query(`UPDATE session SET expires_at = now() - interval '1 second' WHERE ${latest}`)
    await supertest(shop.app.server).get('/api/me').set('cookie', cookie).expect(401)
    await shop.pool.query(`UPDATE session SET expires_at = now() - interval '1 second' WHERE person_id = $1`, [shop.people.second.id])
    await signIn('second', shop.people.second.password).expect(200)
    const kept = await shop.pool.query('SELECT 1 FROM session WHERE person_id = $1', [shop.people.second.id])
    expect(kept.rows).toHaveLength(1)
  })

  it('refuses to go on guessing after ten tries with one name in a minute, and says when to come back', async () => {
    for (let round = 0; round < 10; round += 1) await signIn('guessed', `guess ${round}`).expect(403)
    const refused = await signIn('guessed', 'guess 11').expect(429)
    expect(refused.body.code).toBe('too-many-tries')
    expect(Number(refused.headers['retry-after'])).toBeGreaterThan(0)
    await signIn('owner', shop.people.owner.password).expect(200)
  })
})
