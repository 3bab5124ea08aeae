import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { shortBlock } from '@tenths/domain'
import {
  complete, measure, read, seeAll, send, sign, signBody, startFloor, statesOf, verdictOn, workUpTo,
  type Floor,
} from '../../support/floor.ts'
import { openJob, type OpenedJob } from '../../support/shop.ts'

let shop: Floor
let job: OpenedJob
beforeAll(async () => {
  shop = await startFloor()
  job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'mild-boost' })
}, 60_000)
afterAll(() => shop.stop())

const signOffs = () => `/api/jobs/${job.id}/sign-offs`
const decide = (id: string, body: object) => send(
  shop, `/api/findings/${id}/decision`, { low: null, high: null, ...body }, 'owner',
)

describe('signing', () => {
  it('takes two different people where the step asks for two', async () => {
    await workUpTo(shop, job, 'crack-test')
    const page = await read(shop, job, 'crack-test')
    expect(page.operation.signatures).toBe(2)
    await seeAll(shop, job, page)
    expect(
      (await send(shop, signOffs(), signBody(page, ['machinist'])).expect(422)).body.code,
    ).toBe('second-person-needed')
    expect(
      (await send(shop, signOffs(), signBody(page, ['machinist', 'machinist'])).expect(422)).body.code,
    ).toBe('same-person-twice')
    const body = signBody(page, ['machinist', 'second'])
    const { body: signed } = await send(shop, signOffs(), body).expect(201)
    expect(signed).toMatchObject({
      by: [shop.people.machinist.name, shop.people.second.name], reopened: null,
    })
    // for ever the same signature, whatever key it comes with
    expect((await send(shop, signOffs(), body).expect(201)).body.hash).toBe(signed.hash)
    expect((await statesOf(shop, job))['crack-test']).toBe('signed')
  }, 60_000)

  it('lets an outside be signed under a concession of the owner, and only for the values it covers', async () => {
    await workUpTo(shop, job, 'hone-bores')
    const page = await read(shop, job, 'hone-bores')
    const limit = page.requirements.find(({ key }) => key === 'piston-in-bore/1')?.limits.high ?? 0
    const pistonSize = 85_945_000
    // one thousandth of a millimetre too wide everywhere
    await complete(shop, job, 'hone-bores', () => pistonSize + limit + 1_000)
    const outside = await read(shop, job, 'hone-bores')
    expect(verdictOn(outside, 'piston-in-bore/1')).toMatchObject({ kind: 'outside', side: 'high' })
    const refused = await send(shop, signOffs(), signBody(outside)).expect(409)
    expect(refused.body.detail).toContain('Outside: ')

    const finding = {
      id: randomUUID(), operationKey: 'hone-bores', requirementKey: 'piston-in-bore/1',
      title: 'Bore 1 came out wide',
      sentence: 'One thousandth over.', stops: true,
    }
    const raised = await send(shop, `/api/jobs/${job.id}/findings`, finding).expect(201)
    expect(raised.body).toMatchObject({
      source: 'judge', state: 'open', raisedBy: shop.people.machinist.name,
    })
    const twin = await send(
      shop, `/api/jobs/${job.id}/findings`, { ...finding, id: randomUUID() },
    ).expect(409)
    expect(twin.body.code).toBe('already-exists')
    expect(
      (await send(shop, signOffs(), signBody(outside)).expect(409)).body.detail,
    ).toContain('Waiting for the owner')

    await send(
      shop, `/api/findings/${finding.id}/decision`,
      { decision: 'concession', reason: 'Runs warm', low: null, high: null },
    )
      .expect(403)
    const decided = await decide(
      finding.id, { decision: 'concession', reason: 'Runs warm, coated skirt' },
    ).expect(201)
    expect(decided.body.decision).toMatchObject({
      low: limit + 1_000, high: limit + 1_000, by: shop.people.owner.name,
    })
    expect(
      (await decide(finding.id, { decision: 'scrap', reason: 'too wide' }).expect(409)).body.code,
    ).toBe('finding-decided')
    await sign(shop, job, 'hone-bores')

    const { answer } = await measure(shop, job, {
      operationKey: 'hone-bores', feature: shortBlock.bore(1), gaugeId: shop.exact.length, number: 3,
      values: pistonSize + limit + 2_000,
    })
    expect(answer.reopened.map(({ key }: { key: string }) => key)).toEqual(['hone-bores'])
    expect((await send(shop, signOffs(), signBody(outside)).expect(409)).body.detail).toContain('Outside: ')
  }, 60_000)

  it('a correction re-opens the signature that relied on it and keeps what was written first', async () => {
    await measure(shop, job, {
      operationKey: 'hone-bores', feature: shortBlock.bore(1), gaugeId: shop.exact.length, number: 4,
      values: 86_010_000,
    })
    const before = await read(shop, job, 'hone-bores')
    const limits = before.requirements.find(({ key }) => key === 'piston-in-bore/1')!.limits
    const good = 85_945_000 + (limits.target ?? limits.low ?? 0)
    const { body } = await measure(shop, job, {
      operationKey: 'hone-bores', feature: shortBlock.bore(1), gaugeId: shop.exact.length, number: 5,
      values: good,
    })
    await sign(shop, job, 'hone-bores')
    const [reading] = body.readings
    const corrected = {
      ...reading!, id: randomUUID(), value: good + 1_000, typed: `${(good + 1_000) / 1_000_000} mm`,
      supersedes: reading!.id,
      reason: 'Read the wrong side of the dial',
    }
    const { body: answer } = await send(shop, `/api/jobs/${job.id}/readings`, {
      operationKey: 'hone-bores', pass: body.pass, readings: [corrected],
    }).expect(201)
    expect(answer.reopened.map(({ key }: { key: string }) => key)).toEqual(['hone-bores'])
    const page = await read(shop, job, 'hone-bores')
    expect(page.state).toBe('re-opened')
    expect(page.signOffs.at(-1)?.reopened).toMatchObject({ cause: 'correction' })
    const kept = page.passes.at(-1)?.readings.filter(
      ({ point }) => point === reading!.point,
    ).map(({ value }) => value)
    expect(kept).toEqual([good, good + 1_000])
    const next = Object.entries(await statesOf(shop, job)).find(([key]) => key === 'polish-crank')
    expect(next?.[1]).not.toBe('re-opened')
  }, 60_000)

  it('a tick that is taken back re-opens the step', async () => {
    await sign(shop, job, 'hone-bores')
    const page = await read(shop, job, 'hone-bores')
    const item = page.operation.observations[0]!.key
    await send(shop, `/api/jobs/${job.id}/observations`, {
      operationKey: 'hone-bores', observations: [
        { id: randomUUID(), item, outcome: 'not-seen', note: 'was another block' },
      ],
    }).expect(201)
    expect((await read(shop, job, 'hone-bores')).signOffs.at(-1)?.reopened?.cause).toBe('observation')
  }, 60_000)

  it('counts the time that people worked, one clock for each', async () => {
    const work = (operationKey: string, action: 'start' | 'stop') =>
      send(shop, `/api/jobs/${job.id}/work`, { id: randomUUID(), operationKey, action })
    expect((await work('hone-bores', 'start').expect(200)).body).toEqual({ running: true, minutes: 0 })
    await work('deburr', 'start').expect(200)
    expect((await read(shop, job, 'hone-bores')).work.running).toBe(false)
    expect((await work('deburr', 'stop').expect(200)).body.running).toBe(false)
  })

  it('shows the owner where work piles up and what is late', async () => {
    const { body: desk } = await shop.as('owner').get('/api/desk').expect(200)
    expect(desk.openJobs).toBe(1)
    const hone = desk.load.find((one: { benchKind: string }) => one.benchKind === 'hone')
    // honing the bores, and looking at their finish
    expect(hone).toMatchObject({ benches: 1, operations: 2 })
    expect(hone.readyMinutes).toBeGreaterThan(0)
    expect(desk.atRisk).toEqual([])
    await shop.as('machinist').get('/api/desk').expect(403)
  })
})
