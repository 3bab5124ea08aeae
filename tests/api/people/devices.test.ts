import { createHash, randomUUID } from 'node:crypto'
import type { AddressInfo } from 'node:net'
import { shortBlock, type Plan } from '@tenths/domain'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { addDevice, drawCode, takeOver } from '../../support/bench-device.ts'
import { openStream, signInCookie } from '../../support/event-stream.ts'
import { complete, passBody, read, signBody, startFloor, workUpTo, type Floor, type TestJob } from '../../support/floor.ts'
import { key, openJob } from '../../support/shop.ts'

const noon = new Date('2031-05-02T12:00:00Z')
let now = noon
let shop: Floor
let job: TestJob
beforeAll(async () => {
  shop = await startFloor({ now: () => now })
  job = await openJob(shop)
})
beforeEach(async () => {
  now = noon
  await shop.pool.query('DELETE FROM pin_lock')
})
afterAll(() => shop.stop())

const owner = () => shop.as('owner')
const codeOf = (answer: { body: { code?: string } }) => answer.body.code
async function listed(name: string) {
  const { body } = await owner().get('/api/devices').expect(200)
  return (body as { devices: { id: string; name: string }[] }).devices.find((device) => device.name === name)
}

describe('a shared tablet', () => {
  it('is registered by the owner and becomes the device with a one-time code, which is spent and lapses', async () => {
    const id = randomUUID()
    const secret = drawCode()
    const body = { id, name: 'Tablet at the hone', benchId: shop.benches['hone'], secret }
    const answer = await owner().post('/api/devices').set(key()).send(body).expect(201)
    expect(answer.body).toMatchObject({ id, state: 'waits', benchName: 'Bench: hone', heldBy: null })
    expect(JSON.stringify(answer.body)).not.toContain(secret)
    expect((await owner().post('/api/devices').set(key()).send({ ...body, id: randomUUID(), secret: drawCode() }).expect(409)).body)
      .toMatchObject({ code: 'already-exists', field: 'name' })

    const tablet = shop.anonymous()
    now = new Date(noon.getTime() + 16 * 60_000)
    expect(codeOf(await tablet.post('/api/device/enrolment').send({ secret }).expect(404))).toBe('not-found')
    expect(await listed('Tablet at the hone')).toMatchObject({ state: 'lapsed' })
    const fresh = drawCode()
    await owner().post(`/api/devices/${id}/code`).set(key()).send({ secret: fresh }).expect(200)
    const enrolled = await tablet.post('/api/device/enrolment').send({ secret: fresh }).expect(200)
    const [cookie] = enrolled.headers['set-cookie'] as unknown as string[]
    expect(cookie).toMatch(/^tenths_device=[\w-]{43}; .*HttpOnly; SameSite=Lax$/)
    const { rows } = await shop.pool.query('SELECT secret_hash, code_hash FROM device WHERE id = $1', [id])
    expect(rows).toEqual([{ secret_hash: createHash('sha256').update(/=([^;]+)/.exec(cookie ?? '')?.[1] ?? '').digest('hex'), code_hash: null }])
    await shop.anonymous().post('/api/device/enrolment').send({ secret: fresh }).expect(404)
    expect((await tablet.get('/api/device').expect(200)).body.device).toMatchObject({ name: 'Tablet at the hone', benchId: shop.benches['hone'] })
  })

  it('sends its cookie over the wire only when it is encrypted', async () => {
    const secret = drawCode()
    await owner().post('/api/devices').set(key()).send({ id: randomUUID(), name: 'Far tablet', benchId: shop.benches['mill'], secret }).expect(201)
    const answer = await shop.anonymous().post('/api/device/enrolment').set('host', 'shop.example').send({ secret }).expect(200)
    expect((answer.headers['set-cookie'] as unknown as string[])[0]).toContain('; Secure')
  })

  it('offers machinists and owners with a PIN, and its bench’s queue, to itself alone', async () => {
    const device = await addDevice(shop, 'Tablet that offers')
    const { body } = await device.agent.get('/api/device').expect(200)
    const names = (body as { people: { name: string }[] }).people.map(({ name }) => name)
    expect(names).toEqual(['Ben Machinist', 'Cleo Machinist', 'Dora Owner'])
    expect((body as { queue: { key: string }[] }).queue.map(({ key: step }) => step)).toContain('hone-bores')
    expect((await shop.anonymous().get('/api/device').expect(200)).body).toEqual({ device: null, people: [], queue: [] })
    await device.agent.get('/api/jobs').expect(401)
  })

  it('is taken over with a PIN for a shift of twelve hours, which use does not prolong, and handed back with one touch', async () => {
    const device = await addDevice(shop, 'Tablet for a shift')
    const taken = await takeOver(device, shop.people.machinist).expect(200)
    expect(taken.body).toMatchObject({ name: 'Ben Machinist', device: { id: device.id, name: 'Tablet for a shift' } })
    const left = async () => {
      const { rows } = await shop.pool.query<{ hours: string }>(
        'SELECT extract(epoch FROM expires_at - now()) / 3600 AS hours FROM session WHERE device_id = $1', [device.id],
      )
      return rows.map(({ hours }) => Math.round(Number(hours)))
    }
    expect(await left()).toEqual([12])
    await shop.pool.query(`UPDATE session SET expires_at = now() + interval '1 hour' WHERE device_id = $1`, [device.id])
    expect((await device.agent.get('/api/me').expect(200)).body.device).toMatchObject({ id: device.id })
    expect(await left()).toEqual([1])
    await shop.pool.query(`UPDATE session SET expires_at = now() - interval '1 second' WHERE device_id = $1`, [device.id])
    await device.agent.get('/api/me').expect(401)

    await takeOver(device, shop.people.second).expect(200)
    await device.agent.post('/api/device/hand-back').set(key()).send({}).expect(200)
    await device.agent.get('/api/me').expect(401)
    expect(await left()).toEqual([])
    expect((await device.agent.get('/api/device').expect(200)).body.device).toMatchObject({ id: device.id })
  })

  it('changes hands: whoever had it is signed out, and the owner sees whose it is', async () => {
    const device = await addDevice(shop, 'Tablet that changes hands')
    const first = await takeOver(device, shop.people.machinist).expect(200)
    const before = (first.headers['set-cookie'] as unknown as string[]).find((line) => line.startsWith('tenths_session'))
    await takeOver(device, shop.people.second).expect(200)
    expect((await device.agent.get('/api/me').expect(200)).body.name).toBe('Cleo Machinist')
    await shop.anonymous().get('/api/me').set('cookie', before?.split(';', 1)[0] ?? '').expect(401)
    expect(await listed('Tablet that changes hands')).toMatchObject({ state: 'in-use', heldBy: 'Cleo Machinist' })
  })

  it('binds an ordinary sign-in on it to the device, too', async () => {
    const device = await addDevice(shop, 'Tablet with a password')
    const { signInName, password } = shop.people.owner
    const answer = await device.agent.post('/api/sign-in').send({ signInName, password }).expect(200)
    expect(answer.body.device).toMatchObject({ id: device.id })
  })

  it('that is revoked signs whoever holds it out at once and is taken over no more; its name is free', async () => {
    const device = await addDevice(shop, 'Tablet that is lost')
    await takeOver(device, shop.people.machinist).expect(200)
    await owner().post(`/api/devices/${device.id}/revocation`).set(key()).send({}).expect(200)
    await device.agent.get('/api/me').expect(401)
    expect(codeOf(await takeOver(device, shop.people.machinist).expect(403))).toBe('device-unknown')
    expect((await device.agent.get('/api/device').expect(200)).body.device).toBeNull()
    await addDevice(shop, 'Tablet that is lost')
  })

  it('that gets a new code goes on until it is used; then the tablet that had it is another browser', async () => {
    const device = await addDevice(shop, 'Tablet with a cracked glass')
    await takeOver(device, shop.people.machinist).expect(200)
    const secret = drawCode()
    await owner().post(`/api/devices/${device.id}/code`).set(key()).send({ secret }).expect(200)
    await device.agent.get('/api/me').expect(200)
    await shop.anonymous().post('/api/device/enrolment').send({ secret }).expect(200)
    await device.agent.get('/api/me').expect(401)
    expect((await device.agent.get('/api/device').expect(200)).body.device).toBeNull()
  })

  it('is refused to the counter, and to a browser that is no device', async () => {
    const device = await addDevice(shop, 'Tablet for few')
    expect(codeOf(await takeOver(device, shop.people.counter).expect(403))).toBe('not-allowed')
    expect(codeOf(await takeOver({ agent: shop.anonymous() }, shop.people.machinist).expect(403))).toBe('device-unknown')
  })
})

describe('five wrong PINs', () => {
  it('lock that person on that device, tell the owner at once, and the owner unlocks', async () => {
    const [device, other] = [await addDevice(shop, 'Tablet one'), await addDevice(shop, 'Tablet two')]
    const stream = await openStream((shop.app.server.address() as AddressInfo).port, await signInCookie(shop.app, shop.people.owner))
    const codes = []
    for (let round = 0; round < 5; round += 1) codes.push(codeOf(await takeOver(device, shop.people.machinist, '000000')))
    expect(codes).toEqual(['pin-wrong', 'pin-wrong', 'pin-wrong', 'pin-wrong', 'pin-locked'])
    await stream.until((seen) => seen.some(({ data }) => data.kind === 'pin-locked'))
    stream.close()
    expect(codeOf(await takeOver(device, shop.people.machinist).expect(429))).toBe('pin-locked')
    await takeOver(device, shop.people.second).expect(200)
    await takeOver(other, shop.people.machinist).expect(200)

    const { body } = await owner().get('/api/pin-locks').expect(200)
    expect(body).toEqual({ locks: [{
      personId: shop.people.machinist.id, personName: 'Ben Machinist', device: device.id, deviceName: 'Tablet one',
      since: noon.toISOString(), until: new Date(noon.getTime() + 15 * 60_000).toISOString(),
    }] })
    const unlock = (who: 'owner' | 'machinist') => shop.as(who)
      .post(`/api/people/${shop.people.machinist.id}/pin-unlocking`).set(key()).send({ device: device.id })
    await unlock('machinist').expect(403)
    await unlock('owner').expect(200)
    await unlock('owner').expect(404)
    await takeOver(device, shop.people.machinist).expect(200)
  })

  it('end by themselves after a quarter of an hour', async () => {
    const device = await addDevice(shop, 'Tablet that waits')
    for (let round = 0; round < 5; round += 1) await takeOver(device, shop.people.machinist, '000000')
    now = new Date(noon.getTime() + 15 * 60_000 + 1)
    expect((await owner().get('/api/pin-locks').expect(200)).body).toEqual({ locks: [] })
    await takeOver(device, shop.people.machinist).expect(200)
  })
})

describe('what is done on a device', () => {
  it('is kept with the device: passes, readings, signatures; two signatures need two different PINs', async () => {
    const device = await addDevice(shop, 'Tablet of record')
    await workUpTo(shop, job, 'hone-bores')
    await takeOver(device, shop.people.machinist).expect(200)
    const feature = shortBlock.bore(1)
    const page = await read(shop, job, 'hone-bores')
    const { pass: { partId } } = passBody(page, { operationKey: 'hone-bores', feature, gaugeId: shop.exact.length, values: 0 })
    const taken = page.passes.filter((pass) => pass.partId === partId && pass.feature === feature.feature)
    const body = passBody(page, {
      operationKey: 'hone-bores', feature, gaugeId: shop.exact.length, number: taken.length + 1, values: 102_372_000,
    })
    await device.agent.post(`/api/jobs/${job.id}/readings`).set(key()).send(body).expect(201)
    const { rows } = await shop.pool.query(
      `SELECT DISTINCT pass.device_id AS pass, reading.device_id AS reading
         FROM pass JOIN reading ON reading.pass_id = pass.id WHERE pass.id = $1`, [body.pass.id],
    )
    expect(rows).toEqual([{ pass: device.id, reading: device.id }])

    const { body: plan } = await device.agent.get(`/api/jobs/${job.number}/plan`).expect(200)
    const { operations } = plan as Plan
    const two = operations.slice(operations.findIndex((step) => step.key === 'hone-bores')).find(({ signatures }) => signatures === 2)
    if (two === undefined) throw new Error('A step of the route takes two signatures.')
    await workUpTo(shop, job, two.key)
    await complete(shop, job, two.key)
    const signing = signBody(await read(shop, job, two.key))
    const sign = (changes: object) => device.agent.post(`/api/jobs/${job.id}/sign-offs`).set(key()).send({ ...signing, ...changes })
    const [first, second] = signing.signatures
    expect(codeOf(await sign({ signatures: [first] }).expect(422))).toBe('second-person-needed')
    expect(codeOf(await sign({ signatures: [first, first] }).expect(422))).toBe('same-person-twice')
    expect(codeOf(await sign({ signatures: [first, { ...second, pin: first?.pin }] }).expect(403))).toBe('pin-wrong')
    await sign({}).expect(201)
    const signed = await shop.pool.query('SELECT device_id AS device FROM sign_off WHERE id = $1', [signing.id])
    expect(signed.rows).toEqual([{ device: device.id }])
  }, 240_000)
})
