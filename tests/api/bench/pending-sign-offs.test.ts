import { randomUUID } from 'node:crypto'
import { shortBlock } from '@tenths/domain'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { verifyJob } from '../../../apps/api/src/verify/verify-job.ts'
import { complete, measure, passBody, read, seeAll, send, sign, signBody, startFloor, statesOf, workUpTo, type Floor, type OperationPage } from '../../support/floor.ts'
import { mark, markedAt, markOf } from '../../support/pending.ts'
import { openJob, type OpenedJob } from '../../support/shop.ts'
import type { Who } from '../../support/stock.ts'

let shop: Floor
beforeAll(async () => { shop = await startFloor() }, 60_000)
afterAll(() => shop.stop())

const confirm = (ids: readonly string[], who: Who = 'machinist', pin = shop.people[who].pin) =>
  send(shop, '/api/pending-sign-offs/confirmations', { ids, pin }, who)

async function waitingFor(who: Who): Promise<{ id: string; state: string; title: string; reason: string | null }[]> {
  const { body } = await shop.as(who).get('/api/pending-sign-offs').expect(200)
  return (body as { pending: { id: string; state: string; title: string; reason: string | null }[] }).pending
}

async function newJob(upTo: string, duty = 'street'): Promise<OpenedJob> {
  const job = await openJob(shop, { modelId: shop.models['Test single'], duty })
  await workUpTo(shop, job, upTo)
  return job
}

async function faultsOf(job: OpenedJob): Promise<readonly unknown[]> {
  const client = await shop.pool.connect()
  try {
    return (await verifyJob(client, job.id)).faults
  } finally {
    client.release()
  }
}

describe('a step marked as signed without a network', () => {
  it('is no signature: nothing after it may be done, but for what was done behind it without a network', async () => {
    const job = await newJob('measure-block')
    await complete(shop, job, 'measure-block')
    const before = await statesOf(shop, job)
    const id = await mark(shop, job, 'measure-block')
    expect(await statesOf(shop, job)).toEqual(before)
    expect(before['measure-block']).toBe('under-way')
    expect((await read(shop, job, 'measure-block')).pending).toMatchObject([{ id, state: 'to-confirm', signedAt: markedAt }])

    const page = await read(shop, job, 'hone-bores')
    expect(page.waitsFor).toContainEqual({ key: 'measure-block', title: expect.any(String), marked: true })
    const body = passBody(page, {
      operationKey: 'hone-bores', feature: shortBlock.bore(1), gaugeId: shop.exact.length, number: 2, values: 86_010_000,
    })
    const readings = `/api/jobs/${job.id}/readings`
    expect((await send(shop, readings, body).expect(409)).body.code).toBe('operation-not-reachable')
    // every step between them must be marked as well
    expect((await send(shop, readings, { ...body, behind: true }).expect(409)).body.code).toBe('operation-not-reachable')
    await confirm([id]).expect(200)
  }, 60_000)

  it('is sealed with one PIN for all, in the order of the route, and each seal says when it was given and confirmed', async () => {
    const job = await newJob('measure-block')
    await complete(shop, job, 'measure-block')
    const first = await mark(shop, job, 'measure-block')
    const route = Object.keys(await statesOf(shop, job))
    const second = route[route.indexOf('measure-block') + 1]!
    const page = await read(shop, job, second)
    for (const feature of page.operation.features) {
      const body = passBody(page, { operationKey: second, feature, gaugeId: shop.exact.length, values: sizeOf(page, feature) })
      await send(shop, `/api/jobs/${job.id}/readings`, { ...body, behind: true }).expect(201)
    }
    const observations = page.operation.observations.map(({ key: item }) => ({
      id: randomUUID(), item, outcome: 'seen', note: '', deviceAt: markedAt,
    }))
    if (observations.length > 0) {
      await send(shop, `/api/jobs/${job.id}/observations`, { operationKey: second, observations, behind: true }).expect(201)
    }
    expect(page.operation.signatures).toBe(1)
    const then = await mark(shop, job, second)
    expect((await waitingFor('machinist')).map(({ id }) => id)).toEqual([first, then])

    // the wrong way round, as a list may be sorted
    const { body } = await confirm([then, first]).expect(200)
    expect(body.results.map(({ id, outcome }: { id: string; outcome: string }) => [id, outcome])).toEqual([[first, 'sealed'], [then, 'sealed']])
    expect(await waitingFor('machinist')).toEqual([])
    expect(await statesOf(shop, job)).toMatchObject({ 'measure-block': 'signed', [second]: 'signed' })

    const { rows } = await shop.pool.query<{ payload: string; confirmed: Date }>(
      `SELECT payload, confirmed_at AS confirmed FROM seal JOIN sign_off ON sign_off.job_id = seal.job_id AND seal_number = number
         JOIN pending_confirmation ON pending_sign_off_id = sign_off.id WHERE sign_off.id = $1`, [first],
    )
    expect(JSON.parse(rows[0]!.payload).content.withoutNetwork).toEqual({
      signedAt: markedAt, confirmed: [{ person: shop.people.machinist.id, at: rows[0]!.confirmed.toISOString() }],
    })
    expect(await faultsOf(job)).toEqual([])
    // for ever the same, whatever key it comes with
    const again = await confirm([first]).expect(200)
    expect(again.body.results).toMatchObject([{ id: first, outcome: 'sealed' }])
    await send(shop, `/api/jobs/${job.id}/pending-sign-offs`, { ...markOf(shop, await read(shop, job, 'measure-block')), id: first }).expect(201)
    expect(await waitingFor('machinist')).toEqual([])
  }, 60_000)

  it('is to be signed again when the plan changed meanwhile, and does not keep the others back', async () => {
    const stale = await newJob('hone-bores')
    await complete(shop, stale, 'hone-bores')
    const staleId = await mark(shop, stale, 'hone-bores')
    const { body: plan } = await shop.as('owner').get(`/api/jobs/${stale.number}/plan`).expect(200)
    await send(shop, `/api/jobs/${stale.id}/plan`, {
      duty: 'hard-boost', parts: plan.parts, options: plan.options, sheets: plan.sheets, reason: 'Blower ordered', basedOn: 1,
    }, 'owner').expect(201)
    const good = await newJob('measure-block')
    await complete(shop, good, 'measure-block')
    const goodId = await mark(shop, good, 'measure-block')

    const { body } = await confirm([staleId, goodId]).expect(200)
    expect(body.results).toMatchObject([
      { id: staleId, outcome: 'sign-again', reason: expect.stringContaining('planned otherwise meanwhile') },
      { id: goodId, outcome: 'sealed' },
    ])
    expect(await waitingFor('machinist')).toMatchObject([{ id: staleId, state: 'sign-again', reason: body.results[0].reason }])
    expect((await read(shop, stale, 'hone-bores')).pending).toMatchObject([{ id: staleId, state: 'sign-again' }])
    expect((await confirm([staleId]).expect(200)).body.results).toMatchObject([{ outcome: 'sign-again' }])
    await send(shop, `/api/pending-sign-offs/${staleId}/put-away`, { reason: 'Measured anew for the blower' }).expect(200)
    expect(await waitingFor('machinist')).toEqual([])
    expect(await faultsOf(stale)).toEqual([])
  }, 60_000)

  it('is to be signed again when a value that it relied on was corrected or taken again, until somebody signs the step', async () => {
    const job = await newJob('hone-bores')
    await complete(shop, job, 'hone-bores')
    const id = await mark(shop, job, 'hone-bores')
    const page = await read(shop, job, 'hone-bores')
    const bore = page.passes.findLast(({ operationKey, feature }) => operationKey === 'hone-bores' && feature === shortBlock.bore(1).feature)!
    await measure(shop, job, {
      operationKey: 'hone-bores', feature: shortBlock.bore(1), gaugeId: shop.exact.length, number: bore.number + 1, values: bore.readings[0]!.value,
    })
    const { body } = await confirm([id]).expect(200)
    expect(body.results).toMatchObject([{ outcome: 'sign-again', reason: expect.stringContaining('corrected or taken again') }])
    await sign(shop, job, 'hone-bores')
    expect(await waitingFor('machinist')).toEqual([])
  }, 60_000)

  it('waits for nobody any more once somebody else has signed the step', async () => {
    const job = await newJob('measure-block')
    await complete(shop, job, 'measure-block')
    const id = await mark(shop, job, 'measure-block')
    expect(await waitingFor('machinist')).toMatchObject([{ id, state: 'to-confirm' }])
    const page = await read(shop, job, 'measure-block')
    await send(shop, `/api/jobs/${job.id}/sign-offs`, signBody(page, ['second']), 'second').expect(201)
    expect(await waitingFor('machinist')).toEqual([])
    expect((await read(shop, job, 'measure-block')).pending).toEqual([])
  }, 60_000)

  it('is to be signed again when something is missing, with what is missing', async () => {
    const job = await newJob('measure-block')
    const id = await mark(shop, job, 'measure-block')
    const { body } = await confirm([id]).expect(200)
    expect(body.results).toMatchObject([{ outcome: 'sign-again', reason: expect.stringContaining('cannot be signed yet') }])
    await send(shop, `/api/pending-sign-offs/${id}/put-away`, { reason: 'Marked by mistake' }).expect(200)
  }, 60_000)

  it('is not confirmed by a wrong PIN, nor by whose it is not', async () => {
    const job = await newJob('measure-block')
    await complete(shop, job, 'measure-block')
    const id = await mark(shop, job, 'measure-block')
    expect((await confirm([id], 'machinist', '000000').expect(403)).body.code).toBe('pin-wrong')
    expect((await confirm([id], 'second').expect(404)).body.code).toBe('not-found')
    expect(await waitingFor('machinist')).toMatchObject([{ id, state: 'to-confirm' }])
    await confirm([id]).expect(200)
  }, 60_000)

  it('takes both PINs where two people sign, each on whatever device', async () => {
    const job = await newJob('crack-test', 'mild-boost')
    await seeAll(shop, job, await read(shop, job, 'crack-test'))
    const alone = await mark(shop, job, 'crack-test')
    expect((await confirm([alone]).expect(200)).body.results).toMatchObject([{ outcome: 'sign-again', reason: expect.stringContaining('two people') }])
    const id = await mark(shop, job, 'crack-test', ['machinist', 'second'])
    expect((await confirm([id]).expect(200)).body.results).toMatchObject([{ outcome: 'waits-for-other' }])
    expect(await statesOf(shop, job)).toMatchObject({ 'crack-test': 'under-way' })
    expect(await waitingFor('second')).toMatchObject([{ id, signers: [{ confirmed: true }, { confirmed: false }] }])
    expect((await confirm([id], 'second').expect(200)).body.results).toMatchObject([{ outcome: 'sealed' }])
    expect((await read(shop, job, 'crack-test')).signOffs).toMatchObject([{ by: [shop.people.machinist.name, shop.people.second.name].sort() }])
    expect(await faultsOf(job)).toEqual([])
  }, 60_000)

  it('is refused when somebody else is signed in by now, or one person is named twice', async () => {
    const job = await newJob('measure-block')
    const body = markOf(shop, await read(shop, job, 'measure-block'))
    const path = `/api/jobs/${job.id}/pending-sign-offs`
    expect((await send(shop, path, body, 'second').expect(409)).body.code).toBe('other-person')
    const twice = { ...body, signers: [body.signedBy, body.signedBy] }
    expect((await send(shop, path, twice).expect(422)).body.code).toBe('same-person-twice')
    expect((await send(shop, path, { ...body, signers: [shop.people.second.id] }).expect(400)).body.field).toBe('signers')
  }, 60_000)
})

describe('what waited on a device', () => {
  it('counts the time from when the clock was turned there, and a late repeat of a stop ends nothing', async () => {
    const job = await newJob('measure-block')
    const now = Date.now()
    const ago = (minutes: number) => new Date(now - minutes * 60_000 - 3_600_000).toISOString()
    // the device's clock is an hour behind
    const turn = (action: 'start' | 'stop', minutes: number, id = randomUUID()) => ({
      id, operationKey: 'measure-block', action, workedBy: shop.people.machinist.id, deviceAt: ago(minutes), deviceOffset: 3_600_000,
    })
    const send_ = (body: object) => send(shop, `/api/jobs/${job.id}/work`, body)
    const stopped = turn('stop', 30)
    await send_(turn('start', 75)).expect(200)
    expect((await send_(stopped).expect(200)).body).toEqual({ running: false, minutes: 45 })
    expect((await send_(turn('start', 0)).expect(200)).body.running).toBe(true)
    expect((await send_(stopped).expect(200)).body).toMatchObject({ running: true })
    await send_({ id: randomUUID(), operationKey: 'measure-block', action: 'stop' }).expect(200)
    expect((await send(shop, `/api/jobs/${job.id}/work`, turn('start', 1), 'second').expect(409)).body.code).toBe('other-person')
  }, 60_000)

  it('a tick that arrives a second time has no effect, whatever happened since', async () => {
    const job = await newJob('crack-test')
    const page = await read(shop, job, 'crack-test')
    const item = page.operation.observations[0]!.key
    const tick = (outcome: string, id = randomUUID()) => ({
      operationKey: 'crack-test', seenBy: shop.people.machinist.id, observations: [{ id, item, outcome, note: '', deviceAt: markedAt }],
    })
    const path = `/api/jobs/${job.id}/observations`
    const seen = tick('seen')
    await send(shop, path, seen).expect(201)
    await send(shop, path, tick('not-seen')).expect(201)
    expect((await send(shop, path, seen).expect(201)).body.observations).toMatchObject([{ item, outcome: 'not-seen' }])
    expect((await send(shop, path, tick('seen'), 'second').expect(409)).body.code).toBe('other-person')
  }, 60_000)
})

/** A size within the limits of a step that only records what came in: its nominal. */
function sizeOf(page: OperationPage, reference: { place: string; feature: string }): number {
  return page.features.find(({ place, feature }) => place === reference.place && feature === reference.feature)?.nominal ?? 1_000_000
}
