import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { shortBlock } from '@tenths/domain'
import {
  addGauge, countReadings, measure, passBody, read, send, signBody, startFloor, workUpTo, type Floor,
  type OperationPage,
} from '../../support/floor.ts'
import { key, openJob, type OpenedJob } from '../../support/shop.ts'

const { bore } = shortBlock

let shop: Floor
let job: OpenedJob
let page: OperationPage

/** A job whose block is to be measured: one bore of 86 mm. */
beforeAll(async () => {
  shop = await startFloor()
  job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  await workUpTo(shop, job, 'measure-block')
  page = await read(shop, job, 'measure-block')
}, 60_000)
afterAll(() => shop.stop())

/** A full pass of the bore with other readings or another pass, and what the service says to it. */
async function refused(
  change: {
    reading?: Record<string, unknown>; pass?: Record<string, unknown>; body?: Record<string, unknown>
  }, status: number,
) {
  const body = passBody(
    page, { operationKey: 'measure-block', feature: bore(1), gaugeId: shop.exact.length, values: 86_000_000 },
  )
  const before = await countReadings(shop, job)
  const answer = await send(shop, `/api/jobs/${job.id}/readings`, {
    ...body,
    pass: { ...body.pass, ...change.pass },
    readings: body.readings.map(
      (reading, index) => (index === 1 ? { ...reading, ...change.reading } : reading),
    ),
    ...change.body,
  })
  expect(answer.headers['content-type']).toContain('application/problem+json')
  expect(answer.status, JSON.stringify(answer.body)).toBe(status)
  expect(answer.body.detail).toMatch(/[.?]$/)
  expect(await countReadings(shop, job)).toBe(before)
  return answer.body as { code: string; field: string; detail: string }
}

describe('a reading that cannot be right', () => {
  const field = 'readings.1.typed'

  it('is refused at its field when it is no number', async () => {
    expect(await refused({ reading: { typed: '86.0o mm' } }, 422)).toMatchObject({
      code: 'length-unreadable', field,
    })
  })

  it('is refused in the wrong unit, or a thousand times off, also when it is confirmed', async () => {
    expect(await refused({ reading: { value: 3_385_800, typed: '3.3858 mm' } }, 422)).toMatchObject({
      code: 'value-implausible', field,
    })
    expect(await refused({ reading: { value: 86_000, typed: '0.086 mm' } }, 422)).toMatchObject({
      code: 'value-implausible', field,
    })
  })

  it('is refused when the value is not the one that was typed', async () => {
    expect(await refused({ reading: { value: 86_001_000 } }, 422)).toMatchObject({
      code: 'value-implausible', field,
    })
  })

  it('is refused finer than half a division of a dial, or a digit of a display', async () => {
    const fine = { value: 86_000_508, typed: '86.000508 mm' }
    const onDial = await addGauge(shop, { mark: 'D-mm', resolution: 10_000, analogue: true })
    const onDisplay = await addGauge(shop, { mark: 'E-mm', resolution: 1_000 })
    expect(await refused({ pass: { gaugeId: onDial }, reading: fine }, 422)).toMatchObject({
      code: 'length-too-fine', field,
    })
    expect(await refused({ pass: { gaugeId: onDisplay }, reading: fine }, 422)).toMatchObject({
      code: 'length-too-fine', field,
    })
  })

  it('is refused with a gauge that is out of date, retired, or for something else', async () => {
    const lapsed = await addGauge(shop, { mark: 'OLD', calibratedUntil: '2020-01-31' })
    expect(await refused({ pass: { gaugeId: lapsed } }, 422)).toMatchObject({
      code: 'gauge-out-of-date', field: 'pass.gaugeId',
    })
    expect(
      await refused({ pass: { gaugeId: shop.exact.torque } }, 422),
    ).toMatchObject({ code: 'gauge-unfit' })
    expect(await refused({ pass: { gaugeId: randomUUID() } }, 422)).toMatchObject({ code: 'gauge-unfit' })
  })

  it('is refused for a part, feature, point or step that is not there, and before its turn', async () => {
    expect((await refused({ pass: { partId: randomUUID() } }, 422)).code).toBe('part-unknown')
    expect((await refused({ pass: { feature: 'bore-9' } }, 422)).code).toBe('feature-unknown')
    expect(await refused({ reading: { point: 'top/nowhere' } }, 422)).toMatchObject({
      code: 'point-unknown', field: 'readings.1.point',
    })
    expect((await refused({ body: { operationKey: 'no-such-step' } }, 404)).code).toBe('operation-unknown')
    const early = await refused({ body: { operationKey: 'hone-bores' } }, 409)
    expect(early.code).toBe('operation-not-reachable')
    expect(early.detail).toContain('Measure the block as received')
  })

  it('is refused when somebody else typed it than is signed in by now', async () => {
    expect(await refused({ body: { takenBy: shop.people.second.id } }, 409)).toMatchObject({
      code: 'other-person', field: 'takenBy',
    })
  })

  it('is refused where no pass begins or a point is taken; a correction needs a reason and the reading that counts', async () => {
    expect((await refused({ pass: { number: 2 } }, 409)).code).toBe('pass-not-latest')
    const { body } = await measure(shop, job, {
      operationKey: 'measure-block', feature: bore(1), gaugeId: shop.exact.length, values: 86_010_000,
    })
    const [first] = body.readings
    const again = (reading: Record<string, unknown>) =>
      ({ pass: body.pass, body: { readings: [{ ...first, id: randomUUID(), ...reading }] } })
    expect((await refused(again({}), 409)).code).toBe('point-taken')
    expect((await refused({ pass: { ...body.pass, id: randomUUID() } }, 409)).code).toBe('pass-not-latest')
    expect(
      (await refused(again({ supersedes: randomUUID(), reason: 'slip' }), 409)).code,
    ).toBe('reading-not-latest')
    expect(await refused(again({ supersedes: first!.id }), 400)).toMatchObject({
      code: 'body-invalid', field: 'readings.0.reason',
    })
    const other = { ...body.pass, gaugeId: shop.gauges.M1 }
    expect(
      (await refused(
        {
          pass: other,
          body: { readings: [{ ...first, id: randomUUID(), supersedes: first!.id, reason: 'slip' }] },
        },
        422,
      )).code,
    )
      .toBe('gauge-unfit')
  })
})

describe('the same request twice', () => {
  it('has one effect and one answer, with the same key and with another', async () => {
    const body = passBody(page, {
      operationKey: 'measure-block', feature: shortBlock.mainHousing(1), gaugeId: shop.exact.length,
      values: 59_000_000,
    })
    const path = `/api/jobs/${job.id}/readings`
    const once = key()
    const first = await shop.as('machinist').post(path).set(once).send(body).expect(201)
    const count = await countReadings(shop, job)
    const replay = await shop.as('machinist').post(path).set(once).send(body).expect(201)
    expect(replay.headers['idempotent-replay']).toBe('true')
    expect(replay.body).toEqual(first.body)
    const other = await send(shop, path, body).expect(201)
    expect(other.body.reopened).toEqual([])
    expect(await countReadings(shop, job)).toBe(count)
    const changed = {
      ...body,
      readings: body.readings.map((reading) => ({ ...reading, value: 59_010_000, typed: '59.01 mm' })),
    }
    expect((await send(shop, path, changed).expect(409)).body.code).toBe('point-taken')
  })
})

describe('a signature that cannot stand', () => {
  it('is refused for a wrong PIN, a changed operation, an incomplete one, and a part of the shop that may not', async () => {
    const path = `/api/jobs/${job.id}/sign-offs`
    const good = signBody(page)
    const wrongPin = { ...good, signatures: [{ ...good.signatures[0], pin: '000000' }] }
    expect((await send(shop, path, wrongPin).expect(403)).body).toMatchObject({
      code: 'pin-wrong', field: 'signatures.0.pin',
    })
    expect((await send(shop, path, { ...good, definitionHash: 'another' }).expect(409)).body)
      .toMatchObject({ code: 'operation-changed', field: 'definitionHash' })
    const incomplete = await send(shop, path, good).expect(409)
    expect(incomplete.body.code).toBe('operation-not-complete')
    expect(incomplete.body.detail).toMatch(/Not fully measured: .*Not ticked as seen: /)
    const early = signBody(await read(shop, job, 'hone-bores'))
    expect((await send(shop, path, early).expect(409)).body.code).toBe('operation-not-reachable')
    const signedStep = signBody(await read(shop, job, 'receive'))
    expect((await send(shop, path, signedStep).expect(409)).body.code).toBe('operation-signed')
    const ticks = {
      operationKey: 'measure-block',
      observations: [{ id: randomUUID(), item: 'nothing-such', outcome: 'seen', note: '' }],
    }
    expect((await send(shop, `/api/jobs/${job.id}/observations`, ticks).expect(400)).body)
      .toMatchObject({ code: 'body-invalid', field: 'observations.0.item' })
    await send(shop, `/api/jobs/${job.id}/readings`, {}, 'counter').expect(403)
  })
})
