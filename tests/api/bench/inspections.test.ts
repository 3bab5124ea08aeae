import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import {
  complete, read, resultOf, send, sign, signBody, startFloor, statesOf, testAll, tickAll, workUpTo, type Floor, type OperationPage,
} from '../../support/floor.ts'
import { openJob, type OpenedJob } from '../../support/shop.ts'

let shop: Floor
let job: OpenedJob
let page: OperationPage
beforeAll(async () => {
  shop = await startFloor()
  job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  await workUpTo(shop, job, 'crack-test')
  page = await read(shop, job, 'crack-test')
  await tickAll(shop, job, page)
}, 60_000)
afterAll(() => shop.stop())

const areaOf = (key: string) => page.operation.inspections?.find((area) => area.key === key) ?? expect.fail(`no area ${key}`)
const record = (...results: object[]) =>
  send(shop, `/api/jobs/${job.id}/inspections`, { operationKey: 'crack-test', results })
const trySign = async () => send(shop, `/api/jobs/${job.id}/sign-offs`, signBody(await read(shop, job, 'crack-test')))
const openFindings = async () => (await read(shop, job, 'crack-test')).findings.filter(({ state }) => state === 'open')
const decide = (id: string, decision: string) =>
  send(shop, `/api/findings/${id}/decision`, { decision, reason: 'The owner looked', low: null, high: null }, 'owner')

describe('a crack and pressure test', () => {
  it('is not signed while an area has no result', async () => {
    const keys = page.operation.inspections?.map(({ key }) => key)
    expect(keys).toEqual(['block-webs', 'block-bores', 'block-deck', 'block-jacket', 'crank-fillets', 'crank-oil-holes', 'rod-1'])
    const refused = await (await trySign()).body
    expect(refused).toMatchObject({ code: 'operation-not-complete' })
    expect(refused.detail).toContain('Not tested: Block: main webs')
  })

  it('says at its field what is wrong with a result', async () => {
    const area = areaOf('block-webs')
    expect((await record(resultOf(area, { item: 'sump' })).expect(400)).body).toMatchObject({ field: 'results.0.item' })
    expect((await record(resultOf(area, { method: 'pressure', pressure: 1_000 })).expect(400)).body)
      .toMatchObject({ field: 'results.0.method' })
    expect((await record(resultOf(area, { pressure: 1_000 })).expect(422)).body)
      .toMatchObject({ code: 'value-out-of-range', field: 'results.0.pressure' })
    expect((await record(resultOf(area, { result: 'not-tested' })).expect(400)).body)
      .toMatchObject({ detail: 'Say why it was not tested.', field: 'results.0.note' })
    expect((await record(resultOf(area, { inspectorId: randomUUID() })).expect(400)).body)
      .toMatchObject({ field: 'results.0.inspectorId' })
    expect((await read(shop, job, 'crack-test')).inspections).toEqual([])
  })

  it('keeps method, part, inspector and note of each result', async () => {
    await testAll(shop, job, page)
    const { inspections } = await read(shop, job, 'crack-test')
    expect(inspections).toHaveLength(7)
    expect(inspections.find(({ item }) => item === 'rod-1')).toMatchObject({
      mark: 'R1', method: 'magnetic-particle', result: 'no-indication', inspector: shop.people.machinist.name,
      by: shop.people.machinist.name, counts: true,
    })
  })

  it('stops at an indication what depends on it, until the owner has decided', async () => {
    const found = resultOf(areaOf('rod-1'), { result: 'indication', note: '6 mm along the beam' })
    await record(found).expect(201)
    await record(found).expect(201)
    const findings = await openFindings()
    expect(findings).toHaveLength(1)
    expect(findings[0]).toMatchObject({ stops: true, title: 'Rod 1: beam, bolt seats and small end: shows an indication' })
    expect(findings[0]?.sentence).toContain('6 mm along the beam')
    expect((await (await trySign()).body).detail).toContain('Waiting for the owner')
    expect((await statesOf(shop, job))['measure-rods']).toBe('waiting')

    // a sound result later does not answer the owner's question by itself
    await record(resultOf(areaOf('rod-1'), { note: 'Cleaned, tested again' })).expect(201)
    expect((await (await trySign()).body).detail).toContain('Waiting for the owner')
    await decide(findings[0]?.id ?? '', 'rework').expect(201)
    const { inspections } = await read(shop, job, 'crack-test')
    expect(inspections.filter(({ item }) => item === 'rod-1').map(({ result, counts }) => [result, counts]))
      .toEqual([['no-indication', false], ['indication', false], ['no-indication', true]])
    await sign(shop, job, 'crack-test')
  })

  it('opens its signature again when another result comes in, and lets one pass that the owner concedes', async () => {
    const { body } = await record(
      resultOf(areaOf('block-deck'), { result: 'not-tested', note: 'Sleeved there, cannot be reached' }),
    ).expect(201)
    expect(body.reopened.map(({ key }: { key: string }) => key)).toEqual(['crack-test'])
    expect((await (await trySign()).body).detail).toContain('Waiting for the owner')
    const [finding] = await openFindings()
    await decide(finding?.id ?? '', 'concession').expect(201)
    await sign(shop, job, 'crack-test')
    const { body: recordPage } = await shop.as('owner').get(`/api/jobs/${job.number}/build-record`).expect(200)
    const tested = recordPage.operations.find(({ key }: { key: string }) => key === 'crack-test').inspections
    expect(tested.find(({ item, counts }: { item: string; counts: boolean }) => item === 'block-deck' && counts))
      .toMatchObject({ title: 'Block: deck and bolt holes', result: 'not-tested', conceded: true })
  })

  it('counts for the part that was tested: another one in its place is tested anew', async () => {
    await send(shop, `/api/jobs/${job.id}/parts`, {
      id: randomUUID(), placementId: randomUUID(), mark: 'R9', description: '', lot: '', ownedBy: 'shop', place: 'rod/1',
      reason: 'Another rod',
    }).expect(201)
    const { inspections, state } = await read(shop, job, 'crack-test')
    expect(inspections.filter(({ item }) => item === 'rod-1').some(({ counts }) => counts)).toBe(false)
    expect(state).toBe('re-opened')
  })
})

describe('a final reading', () => {
  it('takes a soak first: since when, and long enough ago', async () => {
    const at = await read(shop, job, 'measure-block')
    const soak = at.operation.observations.find(({ key }) => key === 'soak')
    expect(soak?.asks).toEqual({ kind: 'since', minutes: 120 })
    await testAll(shop, job, page)
    await sign(shop, job, 'crack-test')
    const say = (fields: object) => send(shop, `/api/jobs/${job.id}/observations`, {
      operationKey: 'measure-block', observations: [{ id: randomUUID(), item: 'soak', outcome: 'seen', note: '', ...fields }],
    })
    const ago = (minutes: number) => new Date(Date.now() - minutes * 60_000).toISOString()
    expect((await say({}).expect(400)).body).toMatchObject({ field: 'observations.0.since' })
    expect((await say({ since: ago(40) }).expect(422)).body).toMatchObject({ code: 'value-out-of-range' })
    expect((await say({ outcome: 'not-applicable' }).expect(400)).body).toMatchObject({ field: 'observations.0.note' })
    const since = ago(125)
    const { body } = await say({ since }).expect(201)
    expect(body.observations[0]).toMatchObject({ item: 'soak', since, by: shop.people.machinist.name })
  })
})

describe('what is written down at a step', () => {
  it('is asked for in words, kept with the tick, and opens the signature again when it is written anew', async () => {
    await workUpTo(shop, job, 'hone-bores')
    const at = await read(shop, job, 'hone-bores')
    expect(at.operation.observations.map(({ key, asks }) => [key, asks?.kind])).toEqual([
      ['soak', 'since'], ['plate', 'words'], ['stones', 'words'], ['finish-asked', 'words'],
    ])
    const say = (note: string) => send(shop, `/api/jobs/${job.id}/observations`, {
      operationKey: 'hone-bores', observations: [{ id: randomUUID(), item: 'stones', outcome: 'seen', note }],
    })
    expect((await say('').expect(400)).body).toMatchObject({ field: 'observations.0.note' })
    await complete(shop, job, 'hone-bores')
    await say('280, then 400 for twelve strokes').expect(201)
    await sign(shop, job, 'hone-bores')
    const { rows: [seal] } = await shop.pool.query<{ payload: string }>(
      `SELECT payload FROM seal WHERE job_id = $1 AND kind = 'sign-off' ORDER BY number DESC LIMIT 1`, [job.id],
    )
    expect(seal?.payload).toContain('280, then 400 for twelve strokes')
    await say('280, then 400 for twelve strokes').expect(201)
    expect((await statesOf(shop, job))['hone-bores']).toBe('signed')
    await say('280 only').expect(201)
    expect((await statesOf(shop, job))['hone-bores']).toBe('re-opened')
  }, 60_000)
})
