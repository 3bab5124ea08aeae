import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { shortBlock } from '@tenths/domain'
import {
  addGauge, complete, countReadings, measure, passBody, read, send, sign, signBody, startFloor, statesOf,
  verdictOn, workUpTo,
  type Floor,
} from '../../support/floor.ts'
import { openJob, type OpenedJob } from '../../support/shop.ts'

const tenth = 2_540
/** U = 2·√(u² + u²) of a micrometer and a bore gauge of an ordinary shop is 0.00018 in (from memory). */
const ordinary = (1.8 * tenth) / 2 / Math.SQRT2
const { bore, pinDiameter, smallEnd } = shortBlock

let shop: Floor
let job: OpenedJob
let micrometer: string

/** A forced-induction V8 whose parts are measured: each piston a tenth larger than the one before it. */
beforeAll(async () => {
  shop = await startFloor()
  micrometer = await addGauge(shop, { mark: 'M9', standardUncertainty: ordinary })
  job = await openJob(shop)
  await workUpTo(shop, job, 'receive-parts')
  await complete(shop, job, 'receive-parts', ({ place, feature }, wanted) =>
    feature === 'skirt' ? wanted + Number(place.split('/')[1]) * tenth : wanted)
  // pin 1 once more, with the micrometer that its bushing will be compared with
  await measure(shop, job, {
    operationKey: 'receive-parts', feature: pinDiameter(1), gaugeId: micrometer, number: 2,
    values: 9_270 * tenth,
  })
  await sign(shop, job, 'receive-parts')
  await workUpTo(shop, job, 'hone-bores')
}, 120_000)
afterAll(() => shop.stop())

describe('a bore that is honed again', () => {
  it('After a re-hone with 3 of 24 points measured the bore is not measured; no taper, clearance or signature is offered until the pass is full', async () => {
    await complete(shop, job, 'hone-bores')
    const full = await read(shop, job, 'hone-bores')
    for (const fit of ['bore-taper', 'bore-out-of-round', 'piston-in-bore']) {
      expect(
        full.verdicts.find(({ requirement }) => requirement === `${fit}/1`)?.kind, fit,
      ).not.toBe('not-measured')
    }
    const size = full.passes.find(({ feature }) => feature === 'bore-1')?.readings[0]?.value ?? 0
    const points = full.features.find(
      ({ feature }) => feature === 'bore-1',
    )?.points.map(({ key }) => key) ?? []
    // pass 1 is the bore as it came in, pass 2 as first honed; a bank of four bores has 24 points
    const again = passBody(full, {
      operationKey: 'hone-bores', feature: bore(1), gaugeId: shop.exact.length, number: 3,
      values: Object.fromEntries(points.slice(0, 3).map((point) => [point, size + tenth])),
    })
    await send(shop, `/api/jobs/${job.id}/readings`, again).expect(201)

    const partial = await read(shop, job, 'hone-bores')
    const ofBore1 = partial.verdicts.filter(({ requirement }) => requirement.endsWith('/1'))
    expect(ofBore1.map(({ requirement }) => requirement)).toEqual(
      expect.arrayContaining(['bore-taper/1', 'piston-in-bore/1']),
    )
    for (const verdict of ofBore1) {
      expect(verdict).toMatchObject({ kind: 'not-measured', least: null, greatest: null })
    }
    const refused = await send(shop, `/api/jobs/${job.id}/sign-offs`, signBody(partial)).expect(409)
    expect(refused.body.code).toBe('operation-not-complete')
    expect(refused.body.detail).toContain('Not fully measured')
    // the earlier pass stays to be seen
    expect(
      partial.passes.filter(({ feature }) => feature === 'bore-1').map(({ number }) => number),
    ).toEqual([1, 2, 3])

    const rest = points.slice(3).map((point) => ({
      ...again.readings[0]!, id: crypto.randomUUID(), point,
    }))
    await send(shop, `/api/jobs/${job.id}/readings`, { ...again, readings: rest }).expect(201)
    const whole = await read(shop, job, 'hone-bores')
    expect(verdictOn(whole, 'bore-taper/1')).toMatchObject({ kind: 'within', greatest: 0 })
  }, 60_000)
})

describe('pistons that change places', () => {
  it('Swapping pistons 3 and 5 swaps their clearances without one value typed again, and each piston’s record shows both places with their times', async () => {
    const adjusted = await read(shop, job, 'hone-bores')
    const at = (page: typeof adjusted, cylinder: number) => verdictOn(page, `piston-in-bore/${cylinder}`)
    // all bores are alike and each piston differs, so the clearances differ by the pistons alone
    const [third, fifth] = [at(adjusted, 3), at(adjusted, 5)]
    expect((third.least ?? 0) - (fifth.least ?? 0)).toBe(2 * tenth)
    const before = await countReadings(shop, job)
    const part = (cylinder: number) => adjusted.placed.find(({ place }) => place === `piston/${cylinder}`)!
    const { body } = await send(shop, `/api/jobs/${job.id}/placements`, {
      reason: 'Piston 5 suits bore 3 better',
      moves: [
        { id: crypto.randomUUID(), partId: part(3).partId, place: 'piston/5' },
        { id: crypto.randomUUID(), partId: part(5).partId, place: 'piston/3' },
      ],
    }).expect(201)
    expect(body.reopened.map((step: { key: string }) => step.key)).toEqual(['receive-parts'])

    const swapped = await read(shop, job, 'hone-bores')
    expect(at(swapped, 3)).toMatchObject({ least: fifth.least, greatest: fifth.greatest })
    expect(at(swapped, 5)).toMatchObject({ least: third.least, greatest: third.greatest })
    expect(await countReadings(shop, job)).toBe(before)
    const { rows: reasons } = await shop.pool.query('SELECT DISTINCT reason FROM placement WHERE part_id = $1', [part(3).partId])
    expect(reasons.map(({ reason }) => reason)).toContain('Piston 5 suits bore 3 better')
    const { body: page } = await shop.as('machinist').get(`/api/jobs/${job.number}`).expect(200)
    for (const [mark, places] of [
      ['P3', ['piston/3', 'piston/5']], ['P5', ['piston/5', 'piston/3']],
    ] as const) {
      const piston = page.parts.find((one: { mark: string }) => one.mark === mark)
      expect(piston.place).toBe(places[1])
      expect(piston.history.map((one: { place: string }) => one.place)).toEqual(places)
      const times = piston.history.map((one: { from: string }) => Date.parse(one.from))
      expect(times[1]).toBeGreaterThan(times[0])
    }
    expect((await statesOf(shop, job))['receive-parts']).toBe('re-opened')
    await sign(shop, job, 'receive-parts')
  }, 60_000)

  it('a part that comes in place of another starts with no readings, and what relied on the old one re-opens', async () => {
    const { body } = await send(shop, `/api/jobs/${job.id}/parts`, {
      id: crypto.randomUUID(), placementId: crypto.randomUUID(), mark: 'P8-2', description: 'Replacement',
      lot: 'L77',
      ownedBy: 'shop', place: 'piston/8', reason: 'Crown was scored',
    }).expect(201)
    expect(body.reopened.map((step: { key: string }) => step.key)).toEqual(['receive-parts'])
    const page = await read(shop, job, 'hone-bores')
    expect(verdictOn(page, 'piston-in-bore/8').kind).toBe('not-measured')
    expect(page.placed.find(({ place }) => place === 'piston/8')?.mark).toBe('P8-2')
    expect(page.waitsFor.map(({ key }) => key)).toContain('receive-parts')
    await complete(shop, job, 'receive-parts', ({ place, feature }, wanted) =>
      feature === 'skirt' ? wanted + Number(place.split('/')[1]) * tenth : wanted)
    await measure(shop, job, {
      operationKey: 'receive-parts', feature: pinDiameter(1), gaugeId: micrometer, number: 4,
      values: 9_270 * tenth,
    })
    await sign(shop, job, 'receive-parts')
  }, 60_000)
})

// Common practice, no source: the figures of a forced-induction pin bushing.
describe('a forced-induction pin bushing', () => {
  const small = (number: number, values: number, gaugeId: string, setOnPin: boolean) => ({
    operationKey: 'hone-small-ends', feature: smallEnd(1), gaugeId, number, values,
    ...(setOnPin ? { setOn: pinDiameter(1) } : {}),
  })

  it('0.0004 in of clearance is outside, and the remedy takes 0.0003 in off the bushing', async () => {
    // pass 1 is the bushing as it came in
    const { answer } = await measure(shop, job, small(2, 4 * tenth, shop.gauges.P1, true))
    const verdict = verdictOn(answer, 'pin-in-rod/1')
    expect(verdict).toMatchObject({ kind: 'outside', side: 'low', least: 4 * tenth, greatest: 4 * tenth })
    expect(verdict.uncertainty).toBeCloseTo(0.5 * tenth, 6)
    expect(verdict.remedy).toMatchObject({
      action: 'hone', amount: 3 * tenth, feature: smallEnd(1), reaches: 'target',
    })
    expect(verdict.remedy?.sentence).toContain('0.0003 in')
  }, 60_000)

  it('a new pass at 0.0007 in is within', async () => {
    const { answer } = await measure(shop, job, small(3, 7 * tenth, shop.gauges.P1, true))
    expect(verdictOn(answer, 'pin-in-rod/1')).toMatchObject({ kind: 'within', least: 7 * tenth })
  })

  it('the same 0.0007 in by micrometer and bore gauge is not proven', async () => {
    const boreGauge = await addGauge(shop, { mark: 'B9', standardUncertainty: ordinary })
    const { answer } = await measure(shop, job, small(4, (9_270 + 7) * tenth, boreGauge, false))
    const verdict = verdictOn(answer, 'pin-in-rod/1')
    expect(verdict).toMatchObject({ kind: 'not-proven', least: 7 * tenth, greatest: 7 * tenth })
    expect(verdict.uncertainty).toBeCloseTo(1.8 * tenth, 6)
  })

  it('0.0004 in is within when the engine is not boosted', async () => {
    await measure(shop, job, small(5, 4 * tenth, shop.gauges.P1, true))
    const { body: plan } = await shop.as('owner').get(`/api/jobs/${job.number}/plan`).expect(200)
    await send(shop, `/api/jobs/${job.id}/plan`, {
      duty: 'street', parts: plan.parts, options: plan.options, sheets: plan.sheets,
      reason: 'No blower after all',
      basedOn: plan.revision,
    }, 'owner').expect(201)
    expect(verdictOn(await read(shop, job, 'hone-small-ends'), 'pin-in-rod/1')).toMatchObject({
      kind: 'within', least: 4 * tenth,
    })
  })
})
