import { randomUUID } from 'node:crypto'
import { shortBlock } from '@tenths/domain'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { addDevice, takeOver } from '../../support/bench-device.ts'
import { complete, measure, read, seeAll, send, sign, startFloor, statesOf, tickOf, workUpTo, type Floor, type TestJob } from '../../support/floor.ts'
import { markOf } from '../../support/pending.ts'
import { key, openJob } from '../../support/shop.ts'

let shop: Floor
let job: TestJob
beforeAll(async () => {
  shop = await startFloor()
  job = await openJob(shop)
  await workUpTo(shop, job, 'hone-bores')
}, 120_000)
afterAll(() => shop.stop())

const running = async (operationKey: string) => (await read(shop, job, operationKey)).work.running
/** Steps that can be worked at now. */
async function open(): Promise<string[]> {
  return Object.entries(await statesOf(shop, job)).filter(([, state]) => state === 'ready' || state === 'under-way').map(([step]) => step)
}

describe('work on a step', () => {
  it('begins by itself with the first value and is paused when another step is begun or the tablet handed back', async () => {
    await measure(shop, job, {
      operationKey: 'hone-bores', feature: shortBlock.bore(1), gaugeId: shop.exact.length, values: 102_362_000,
      number: (await read(shop, job, 'hone-bores')).passes.filter(({ partId, feature }, _index, all) =>
        partId === all[0]?.partId && feature === shortBlock.bore(1).feature).length + 1,
    })
    expect(await running('hone-bores')).toBe(true)

    const other = (await open()).find((step) => step !== 'hone-bores')
    if (other === undefined) throw new Error('More than one step can be worked at.')
    await seeAll(shop, job, await read(shop, job, other))
    expect([await running('hone-bores'), await running(other)]).toEqual([false, true])

    const device = await addDevice(shop, 'Tablet')
    await takeOver(device, shop.people.machinist).expect(200)
    await device.agent.post('/api/device/hand-back').set(key()).send({}).expect(200)
    expect(await running(other)).toBe(false)
  })

  it('is paused and gone on with by one touch, and pauses for whoever had the tablet before', async () => {
    const device = await addDevice(shop, 'Second tablet')
    await takeOver(device, shop.people.machinist).expect(200)
    const work = (action: 'start' | 'stop') => device.agent.post(`/api/jobs/${job.id}/work`).set(key())
      .send({ id: randomUUID(), operationKey: 'hone-bores', action }).expect(200)
    expect((await work('start')).body.running).toBe(true)
    expect((await work('stop')).body.running).toBe(false)
    await work('start')
    await takeOver(device, shop.people.second).expect(200)
    expect(await running('hone-bores')).toBe(false)
  })

  it('pauses when its person signs out through the menu', async () => {
    const device = await addDevice(shop, 'Third tablet')
    await takeOver(device, shop.people.machinist).expect(200)
    await device.agent.post(`/api/jobs/${job.id}/work`).set(key())
      .send({ id: randomUUID(), operationKey: 'hone-bores', action: 'start' }).expect(200)
    expect(await running('hone-bores')).toBe(true)
    await device.agent.post('/api/sign-out').expect(200)
    expect(await running('hone-bores')).toBe(false)
    await device.agent.get('/api/me').expect(401)
    // nobody is signed in any more: leaving once more changes nothing
    await device.agent.post('/api/sign-out').expect(200)
  })

  it('counts for one shift at most when it was forgotten, and ends when the step is signed', async () => {
    await shop.pool.query(
      `INSERT INTO work_time (id, job_id, operation_key, person_id, started_at) VALUES ($1, $2, 'hone-bores', $3, now() - interval '3 days')`,
      [randomUUID(), job.id, shop.people.second.id],
    )
    const { work } = await read(shop, job, 'hone-bores', 'second')
    expect(work.running).toBe(true)
    expect(work.minutes).toBeGreaterThanOrEqual(12 * 60)
    expect(work.minutes).toBeLessThan(12 * 60 + 10)
    await complete(shop, job, 'hone-bores')
    await sign(shop, job, 'hone-bores')
    expect((await read(shop, job, 'hone-bores', 'second')).work.running).toBe(false)
  })
})

describe('the hours taken', () => {
  it('stand against the standard at the desk, and from three jobs on the forecasts reckon with them', async () => {
    const desk = async () => (await shop.as('owner').get('/api/desk').expect(200)).body as {
      pace: { key: string; jobs: number; standardMinutes: number; takenMinutes: number; isUsed: boolean }[]
      load: { benchKind: string; readyMinutes: number; waitingMinutes: number }[]
    }
    const atCounter = async () => (await desk()).load.find(({ benchKind }) => benchKind === 'counter')?.readyMinutes ?? 0
    const waiting = await openJob(shop)
    const { operation: { minutes: standard } } = await read(shop, waiting, 'receive')
    const before = await atCounter()
    for (const round of [1, 2, 3]) {
      const timed = await openJob(shop)
      await complete(shop, timed, 'receive')
      await sign(shop, timed, 'receive')
      await shop.pool.query(
        `UPDATE work_time SET started_at = stopped_at - make_interval(mins => $2) WHERE job_id = $1`, [timed.id, standard * 3],
      )
      const line = (await desk()).pace.find((one) => one.key === 'receive')
      expect(line).toEqual({
        key: 'receive', title: expect.any(String), jobs: round, standardMinutes: standard, takenMinutes: standard * 3, isUsed: round === 3,
      })
      if (round < 3) expect(await atCounter()).toBe(before)
    }
    expect(await atCounter()).toBe(before + 2 * standard)
  })
})

describe('work without a network', () => {
  it('counts from when it was begun until it was marked as signed, also where the tablet’s clock is hours slow', async () => {
    const slow = await openJob(shop)
    const hoursSlow = 15
    const device = (minutesAgo: number) => ({
      deviceAt: new Date(Date.now() - (hoursSlow * 60 + minutesAgo) * 60_000).toISOString(), deviceOffset: hoursSlow * 3_600_000,
    })
    const page = await read(shop, slow, 'receive')
    const { deviceAt, deviceOffset } = device(50)
    const observations = page.operation.observations.map((thing) => ({ ...tickOf(shop, thing), deviceAt }))
    await send(shop, `/api/jobs/${slow.id}/observations`, { operationKey: 'receive', deviceOffset, observations }, 'owner').expect(201)
    expect((await read(shop, slow, 'receive', 'owner')).work).toEqual({ running: true, minutes: 50 })
    await send(shop, `/api/jobs/${slow.id}/pending-sign-offs`, { ...markOf(shop, page, ['owner']), ...device(20) }, 'owner').expect(201)
    expect((await read(shop, slow, 'receive', 'owner')).work).toEqual({ running: false, minutes: 30 })
  })
})
