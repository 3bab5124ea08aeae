import type { readBuildRecord } from '@tenths/contract'
import { shortBlock } from '@tenths/domain'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { z } from 'zod'
import {
  complete, passBody, read, seeAll, send, sign, signBody, startFloor, verdictOn, workUpTo, type Floor, type TestJob,
} from '../../support/floor.ts'
import { openJob } from '../../support/shop.ts'

let floor: Floor
let job: TestJob

beforeAll(async () => {
  floor = await startFloor()
  job = await openJob(floor, { work: 'balancing' })
  await workUpTo(floor, job, 'balance')
}, 240_000)

afterAll(async () => floor?.stop())

const record = async () => (await floor.as('machinist').get(`/api/jobs/${job.number}/build-record`).expect(200))
  .body as z.infer<(typeof readBuildRecord)['answer']>

/** One weight in the words that were typed. */
async function typeWeight(cylinder: number, typed: string, value: number, more: Record<string, unknown> = {}) {
  const page = await read(floor, job, 'balance')
  const body = passBody(page, {
    operationKey: 'balance', feature: shortBlock.pistonWeight(cylinder), gaugeId: floor.exact.mass, values: value,
    number: 1 + page.passes.filter(({ feature, partId }) => feature === 'weight'
      && partId === page.placed.find(({ place }) => place === `piston/${cylinder}`)?.partId).length,
  })
  const readings = body.readings.map((reading) => ({ ...reading, typed, confirmed: false, ...more }))
  return send(floor, `/api/jobs/${job.id}/readings`, { ...body, readings })
}

describe('the balance of a V8', () => {
  it('takes a weight in grams or ounces, and refuses one that is not what was typed', async () => {
    await typeWeight(1, '520.4 g', 520_400).then(({ status }) => expect(status).toBe(201))
    await typeWeight(2, '18.35 oz', 520_214).then(({ status }) => expect(status).toBe(201))
    const other = await typeWeight(3, '520.4 g', 520_000)
    expect(other.body).toMatchObject({ code: 'value-implausible', field: 'readings.0.typed' })
  })

  it('asks about a piston of 130 g and believes no ounces for grams', async () => {
    const ounces = await typeWeight(3, '18.35 g', 18_350)
    expect(ounces.body).toMatchObject({ code: 'value-implausible', detail: expect.stringMatching(/ounces and grams/) })
    const light = await typeWeight(3, '130 g', 130_000)
    expect(light.body).toMatchObject({ code: 'value-implausible' })
  })

  it('knows no bobweight before everything is weighed, and says what is missing', async () => {
    const step = (await record()).operations.find(({ key }) => key === 'balance')
    expect(step?.bobweights.map(({ value }) => value)).toEqual([null, null, null, null])
    expect(step?.bobweights[0]?.missing).toContain('Weight of piston 5')
  })

  it('is not signed while a piston is heavier than the set allows, and says how much comes off', async () => {
    await complete(floor, job, 'balance', (feature, wanted) => (
      feature.place === 'piston/3' ? wanted + 2_400 : wanted
    ))
    const page = await read(floor, job, 'balance')
    const heavy = verdictOn(page, 'piston-weight/3')
    expect(heavy).toMatchObject({ kind: 'outside', remedy: { action: 'lighten', amount: 2_400 } })
    expect(heavy.remedy?.sentence).toContain('Take 2.4 g off, to bring the weight of piston 3 down to the lightest of its set')
    const refused = await send(floor, `/api/jobs/${job.id}/sign-offs`, signBody(page)).expect(409)
    expect(refused.body).toMatchObject({ code: 'operation-not-complete' })
  })

  it('is signed once it is lightened, with its bobweights in the build record and on paper', async () => {
    await typeWeight(3, '1000 g', 1_000_000).then(({ status }) => expect(status).toBe(201))
    await seeAll(floor, job, await read(floor, job, 'balance'))
    await sign(floor, job, 'balance')
    const step = (await record()).operations.find(({ key }) => key === 'balance')
    // Every weight of the test is a kilogram: two rods turn 4 kg with 4 g of oil, and half of 10 kg goes up and down.
    expect(step?.bobweights.map(({ value }) => value)).toEqual([9_004_000, 9_004_000, 9_004_000, 9_004_000])
    expect(step?.bobweights[0]?.worked.at(-1)).toBe('4004.0 g + 50 % of 10000.0 g = 9004.0 g')
    await floor.as('machinist').get(`/api/jobs/${job.number}/build-record.pdf`).expect(200).expect('content-type', /pdf/)
  })
})
