import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { shortBlock, type FeatureReference } from '@tenths/domain'
import { verifyShop } from '../../../apps/api/src/verify/verify-shop.ts'
import {
  addGauge, complete, passBody, read, send, sign, signBody, startFloor, verdictOn, workUpTo, type Floor, type OperationPage,
} from '../../support/floor.ts'
import { openJob, type OpenedJob } from '../../support/shop.ts'

const { bore, endGap, mainJournal } = shortBlock
const tenth = 2_540
const nominal = 86_000_000

let shop: Floor
let job: OpenedJob
let dial: string
let feelers: string

beforeAll(async () => {
  shop = await startFloor()
  job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  dial = await addGauge(shop, {
    mark: 'DB', kind: 'dial-bore-gauge', analogue: true, clockwiseIsSmaller: true, resolution: tenth, standardUncertainty: tenth / 4,
  })
  feelers = await addGauge(shop, { mark: 'FB', kind: 'feeler', resolution: tenth, standardUncertainty: tenth })
  await workUpTo(shop, job, 'measure-block')
}, 60_000)
afterAll(() => shop.stop())

interface Wanted {
  readonly step: string
  readonly feature: FeatureReference
  readonly gaugeId: string
  readonly pass?: Record<string, unknown>
  /** By point: what differs from a plain reading of the nominal size. */
  readonly readings?: readonly Record<string, unknown>[]
}

/** One pass with everything a plain one has, and whatever is to be different. */
async function take({ step, feature, gaugeId, pass = {}, readings = [] }: Wanted, of: OpenedJob = job) {
  const page = await read(shop, of, step)
  const number = 1 + page.passes.filter((one) => one.feature === feature.feature).length
  const body = passBody(page, { operationKey: step, feature, gaugeId, number, values: nominal })
  return send(shop, `/api/jobs/${of.id}/readings`, {
    ...body, pass: { ...body.pass, ...pass },
    readings: body.readings.map((reading, index) => ({ ...reading, confirmed: false, ...readings[index] })),
  })
}

const latest = (page: OperationPage, feature: FeatureReference) => page.passes.filter((one) => one.feature === feature.feature).at(-1)!

describe('a comparator', () => {
  const setting = { size: nominal, temperature: null }
  const step = 'measure-block'
  const off = (tenths: readonly number[]) => tenths.map((count) => ({
    // clockwise is smaller: plus on the dial is a smaller bore
    typed: count < 0 ? String(count) : `+${count}`, value: nominal - count * tenth,
  }))

  it('types deviations by its own sign, kept as size and as typed', async () => {
    const answer = await take({ step, feature: bore(1), gaugeId: dial, pass: { setting }, readings: off([3, 2, -1.5, 1, 2, 0]) })
    expect(answer.status, JSON.stringify(answer.body)).toBe(201)
    const pass = latest(await read(shop, job, step), bore(1))
    expect(pass.setting).toEqual(setting)
    expect(pass.readings.map(({ typed, value }) => [typed, value]))
      .toEqual(expect.arrayContaining([['+3', nominal - 3 * tenth], ['-1.5', nominal + 3_810]]))
  })

  it('is refused a deviation by the wrong sign, one without a setting, and a setting in the wrong unit', async () => {
    const wrong = off([3, 2, 1, 1, 2, 0]).map(({ typed, value }) => ({ typed, value: 2 * nominal - value }))
    expect((await take({ step, feature: bore(1), gaugeId: dial, pass: { setting }, readings: wrong })).body)
      .toMatchObject({ code: 'value-implausible', field: 'readings.0.typed' })
    expect((await take({ step, feature: bore(1), gaugeId: dial, readings: off([3, 2, 1, 1, 2, 0]) })).status).toBe(422)
    expect((await take({ step, feature: bore(1), gaugeId: dial, pass: { setting: { size: 3_385_827, temperature: null } } })).body)
      .toMatchObject({ code: 'value-implausible', field: 'pass.setting.size' })
  })

  it('that is put back on its setting and shows nothing keeps what it read; one that drifted voids it', async () => {
    const check = (deviation: number, typed: string) => send(shop, `/api/jobs/${job.id}/zero-checks`, { id: randomUUID(), gaugeId: dial, deviation, typed })
    expect((await check(tenth, '+1')).body).toMatchObject({ code: 'value-implausible', field: 'typed' })
    expect((await check(-tenth, '+1')).body).toMatchObject({ hasDrifted: false, allowed: tenth, passes: 1, reopened: [], alsoRead: [] })
    expect(latest(await read(shop, job, step), bore(1))).toMatchObject({ isVoid: false, zero: { deviation: -tenth, allowed: tenth } })
    // nothing was read since: a drift found now says nothing of it
    expect((await check(-2 * tenth, '+2')).body).toMatchObject({ hasDrifted: true, passes: 0 })
    expect(latest(await read(shop, job, step), bore(1)).isVoid).toBe(false)

    const again = await take({ step, feature: bore(1), gaugeId: dial, pass: { setting }, readings: off([3, 2, -1.5, 1, 2, 0]) })
    expect(again.status).toBe(201)
    const drifted = { id: randomUUID(), gaugeId: dial, deviation: -2 * tenth, typed: '+2' }
    const sent = await send(shop, `/api/jobs/${job.id}/zero-checks`, drifted)
    expect(sent.body).toMatchObject({ hasDrifted: true, passes: 1 })
    expect((await send(shop, `/api/jobs/${job.id}/zero-checks`, drifted)).body).toEqual(sent.body)
    // a check that waited on a device goes under nobody else's name, and comes in once however often it is sent
    const once = { ...drifted, id: randomUUID(), deviation: 0, typed: '0' }
    expect((await send(shop, `/api/jobs/${job.id}/zero-checks`, { ...once, checkedBy: randomUUID() })).body)
      .toMatchObject({ code: 'other-person', field: 'checkedBy' })
    const { rows: [kept] } = await shop.pool.query<{ checks: number; passes: number }>(
      `SELECT count(DISTINCT zero_check.id)::integer AS checks, count(zero_check_pass.pass_id)::integer AS passes
         FROM zero_check LEFT JOIN zero_check_pass ON zero_check_id = zero_check.id WHERE id IN ($1, $2)`, [drifted.id, once.id])
    expect(kept).toEqual({ checks: 1, passes: 1 })
    expect((await send(shop, `/api/jobs/${job.id}/zero-checks`, { ...drifted, deviation: 0, typed: '0' })).body.code).toBe('already-exists')

    const page = await read(shop, job, step)
    expect(latest(page, bore(1)).isVoid).toBe(true)
    const refused = await send(shop, `/api/jobs/${job.id}/sign-offs`, signBody(page))
    expect(refused.body).toMatchObject({ code: 'operation-not-complete', detail: expect.stringContaining('Bore 1') })
    const into = latest(page, bore(1))
    const more = passBody(page, { operationKey: step, feature: bore(1), gaugeId: dial, number: into.number, passId: into.id, values: nominal })
    expect((await send(shop, `/api/jobs/${job.id}/readings`, more)).body).toMatchObject({ code: 'pass-not-latest', detail: expect.stringContaining('drifted') })
  })

  it('whose drift is found after the signature opens it again, sealed with the reason', async () => {
    await complete(shop, job, step)
    const last = await take({
      step, feature: bore(1), gaugeId: dial, pass: { setting },
      // smaller than the pass before it: asked about, and stood by
      readings: off([3, 2, -1.5, 1, 2, 0]).map((reading) => ({ ...reading, confirmed: true })),
    })
    expect(last.status, JSON.stringify(last.body)).toBe(201)
    await sign(shop, job, step)
    const { rows: [seal] } = await shop.pool.query<{ payload: string }>(
      `SELECT payload FROM seal WHERE job_id = $1 AND kind = 'sign-off' ORDER BY number DESC LIMIT 1`, [job.id])
    expect(JSON.parse(seal!.payload).content.zeros).toEqual({ checked: [], unchecked: ['DB'] })
    expect(JSON.parse(seal!.payload).content.readings).toEqual(expect.arrayContaining([expect.objectContaining({ typed: '+3', setting: nominal })]))

    const { body } = await send(shop, `/api/jobs/${job.id}/zero-checks`, { id: randomUUID(), gaugeId: dial, deviation: 3 * tenth, typed: '-3' })
    expect(body).toMatchObject({ hasDrifted: true, reopened: [{ key: step }] })
    expect((await read(shop, job, step)).state).toBe('re-opened')
    await complete(shop, job, step)
    await sign(shop, job, step)
  })
})

describe('an unlikely value', () => {
  const step = 'measure-crank'
  const journal = mainJournal(1)

  it('is refused at its place with the reason, and taken when somebody stands by it', async () => {
    await workUpTo(shop, job, step)
    const page = await read(shop, job, step)
    const size = page.features.find(({ feature }) => feature === journal.feature)!.nominal!
    const plain = (value: number) => ({ value, typed: `${value / 1_000_000} mm` })
    const readings = [size, size, size - 635_000, size].map(plain)
    const wanted = { step, feature: journal, gaugeId: shop.exact.length, readings }
    const refused = await take(wanted)
    expect(refused.body).toMatchObject({ code: 'value-implausible', field: 'readings.2.typed', detail: expect.stringContaining('thimble') })
    const stoodBy = readings.map((reading, index) => (index === 2 ? { ...reading, confirmed: true } : reading))
    const taken = await take({ ...wanted, readings: stoodBy.map((reading, index) => (index === 3 ? { ...reading, confirmed: true } : reading)) })
    expect(taken.status, JSON.stringify(taken.body)).toBe(201)
    expect(latest(await read(shop, job, step), journal).readings.filter(({ confirmed }) => confirmed)).toHaveLength(2)
  })

  it('in the wrong unit wants a note as well, which is kept', async () => {
    const size = (await read(shop, job, step)).features.find(({ feature }) => feature === mainJournal(2).feature)!.nominal!
    const plain = { value: size, typed: `${size / 1_000_000} mm`, confirmed: true }
    const small = Math.round(size / 25.4)
    const absurd = { value: small, typed: `${small / 1_000_000} mm`, confirmed: true }
    const wanted = { step, feature: mainJournal(2), gaugeId: shop.exact.length }
    const readings = [absurd, plain, plain, plain]
    expect((await take({ ...wanted, readings })).body).toMatchObject({ code: 'value-implausible', field: 'readings.0.typed' })
    const noted = { ...absurd, note: 'A stub of another crank, for the gauge’s sake.' }
    const taken = await take({ ...wanted, readings: [noted, plain, plain, plain] })
    expect(taken.status, JSON.stringify(taken.body)).toBe(201)
    expect(latest(await read(shop, job, step), mainJournal(2)).readings.find(({ value }) => value === small)).toMatchObject({ note: noted.note })
    await complete(shop, job, step)
  })
})

describe('feelers', () => {
  it('are kept as the blade that enters and the one that does not, judged as an interval, and sealed so', async () => {
    await workUpTo(shop, job, 'ring-gaps')
    const step = 'ring-gaps'
    const page = await read(shop, job, step)
    const requirement = page.requirements.find(({ measurand }) => measurand.kind === 'feature' && measurand.feature.place === 'top-ring/1' && measurand.feature.feature === 'end-gap')
    const low = requirement!.limits.low!
    const thousandths = Math.ceil(low / 25_400)
    const reading = (enters: number, stops: number) => ({
      value: enters * 25_400, typed: `.0${enters}/.0${stops}`, blades: { stops: stops * 25_400 }, confirmed: true,
    })
    const taken = await take({ step, feature: endGap('top-ring', 1), gaugeId: feelers, readings: [reading(thousandths, thousandths + 1)] })
    expect(taken.status, JSON.stringify(taken.body)).toBe(201)
    const after = await read(shop, job, step)
    expect(latest(after, endGap('top-ring', 1)).readings[0]).toMatchObject({ blades: { stops: (thousandths + 1) * 25_400 } })
    expect(verdictOn(after, requirement!.key)).toMatchObject({ kind: 'within', least: thousandths * 25_400, greatest: (thousandths + 1) * 25_400 })
    const below = await take({ step, feature: endGap('top-ring', 1), gaugeId: feelers, readings: [reading(thousandths - 1, thousandths + 1)] })
    expect(below.status).toBe(201)
    expect(verdictOn(await read(shop, job, step), requirement!.key)).toMatchObject({ kind: 'not-proven', side: 'low' })
  })
})

describe('a part that is not at 20 °C', () => {
  it('is asked to be soaked, then judged by its size at 20 °C where its material is known, and says so', async () => {
    const step = 'main-bearings'
    await workUpTo(shop, job, step)
    await complete(shop, job, step)
    const page = await read(shop, job, step)
    expect(page.materials).toMatchObject({ crankshaft: 'steel-4140' })
    const before = verdictOn(page, 'main-bearing/1')
    const cold = latest(page, mainJournal(1)).readings.map(({ value }) => ({ value, typed: `${value / 1_000_000} mm`, confirmed: false }))
    const journal = { step, feature: mainJournal(1), gaugeId: shop.exact.length }
    const asked = await take({ ...journal, readings: cold, pass: { temperatures: { part: 27_000, room: 23_000 } } })
    expect(asked.body).toMatchObject({ code: 'value-implausible', field: 'readings.0.typed', detail: expect.stringContaining('soak') })
    const stoodBy = cold.map((one) => ({ ...one, confirmed: true }))
    const taken = await take({ ...journal, readings: stoodBy, pass: { temperatures: { part: 27_000, room: 23_000 } } })
    expect(taken.status, JSON.stringify(taken.body)).toBe(201)

    const after = await read(shop, job, step)
    expect(latest(after, mainJournal(1))).toMatchObject({ temperatures: { part: 27_000, room: 23_000 }, material: 'steel-4140' })
    const verdict = verdictOn(after, 'main-bearing/1')
    expect(verdict.advice).toContain('is corrected to 20 °C by')
    // L(1 + 11.5e-6 · 3)/(1 + 12.3e-6 · 7) is 51.6e-6 of the journal smaller, so the clearance is that much larger
    const size = cold[0]!.value
    expect(Math.abs(verdict.least! - before.least! - size * 51.6e-6)).toBeLessThan(30)
    await complete(shop, job, step)
  })
})

it('the build record tells of setting, zero, doubt, feelers and temperatures, on the page and on paper', async () => {
  const { body: record } = await shop.as('owner').get(`/api/jobs/${job.number}/build-record`).expect(200)
  const passes = record.passes as (OperationPage['passes'][number] & { mark: string })[]
  expect(passes.filter(({ isVoid }) => isVoid).map(({ gaugeMark, setting, zero }) => ({ gaugeMark, setting, zero }))).toContainEqual(
    expect.objectContaining({ gaugeMark: 'DB', setting: { size: nominal, temperature: null }, zero: expect.objectContaining({ deviation: -2 * tenth, allowed: tenth }) }))
  const readings = passes.flatMap((pass) => pass.readings)
  expect(readings.filter(({ note }) => note !== null)).toMatchObject([{ confirmed: true, note: expect.stringContaining('stub') }])
  expect(readings.some(({ blades }) => blades?.stops)).toBe(true)
  expect(passes.find(({ temperatures }) => temperatures !== null)).toMatchObject({ temperatures: { part: 27_000, room: 23_000 }, material: 'steel-4140' })
  await shop.as('owner').get(`/api/jobs/${job.number}/build-record.pdf`).expect(200)
})

it('verify finds every seal, verdict and zero check as it was kept', async () => {
  const faults = []
  for await (const report of verifyShop(shop.pool)) faults.push(...report.faults)
  expect(faults).toEqual([])
})
