import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { complete, read, resultOf, send, startFloor, workUpTo, type Floor, type OperationPage } from '../../support/floor.ts'
import { mark } from '../../support/pending.ts'
import { jpeg, photographOf } from '../../support/photograph.ts'
import { openJob, type OpenedJob } from '../../support/shop.ts'

/** What a device kept without a network, sent again much later: under another key, after others have said otherwise. */

let shop: Floor
let job: OpenedJob
let page: OperationPage
beforeAll(async () => {
  shop = await startFloor()
  job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  await workUpTo(shop, job, 'crack-test')
  page = await read(shop, job, 'crack-test')
}, 60_000)
afterAll(() => shop.stop())

const deviceAt = '2026-01-02T03:04:05.000Z'
const to = (what: string) => `/api/jobs/${job.id}/${what}`
const areaOf = (key: string) => page.operation.inspections?.find((area) => area.key === key) ?? expect.fail(`no area ${key}`)
const decide = (id: string) => send(
  shop, `/api/findings/${id}/decision`, { decision: 'rework', reason: 'The owner looked', low: null, high: null }, 'owner',
).expect(201)
const deviceAtOf = async (table: string, id: string) =>
  (await shop.pool.query<{ at: Date }>(`SELECT device_at AS at FROM ${table} WHERE id = $1`, [id])).rows[0]?.at.toISOString()

describe('the result of a crack test, sent again', () => {
  it('has one effect, and keeps when the device had it', async () => {
    const result = resultOf(areaOf('rod-1'), { result: 'indication', note: '6 mm along the beam', deviceAt })
    const body = { operationKey: 'crack-test', testedBy: shop.people.machinist.id, results: [result] }
    const first = await send(shop, to('inspections'), body).expect(201)
    const [finding] = (await read(shop, job, 'crack-test')).findings.filter(({ state }) => state === 'open')
    await decide(finding?.id ?? '')
    await send(shop, to('inspections'), { operationKey: 'crack-test', results: [resultOf(areaOf('rod-1'))] }, 'second').expect(201)
    const again = await send(shop, to('inspections'), body).expect(201)
    expect(again.body.inspections.find(({ id }: { id: string }) => id === result.id))
      .toEqual({ ...first.body.inspections[0], counts: false })
    expect(again.body.inspections).toHaveLength(2)
    expect((await read(shop, job, 'crack-test')).findings.filter(({ state }) => state === 'open')).toEqual([])
    expect(await deviceAtOf('inspection', result.id)).toBe(deviceAt)
  })

  it('never lands under another name, nor in place of another’s', async () => {
    const result = resultOf(areaOf('rod-1'))
    const body = { operationKey: 'crack-test', testedBy: shop.people.machinist.id, results: [result] }
    expect((await send(shop, to('inspections'), body, 'second').expect(409)).body).toMatchObject({ code: 'other-person', field: 'testedBy' })
    await send(shop, to('inspections'), body).expect(201)
    const { testedBy: _, ...unnamed } = body
    expect((await send(shop, to('inspections'), unnamed, 'second').expect(409)).body.code).toBe('already-exists')
  })

  it('may be behind a step that is only marked as signed, and says so', async () => {
    const other = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
    await workUpTo(shop, other, 'strip-wash')
    await complete(shop, other, 'strip-wash')
    const path = `/api/jobs/${other.id}/inspections`
    const body = { operationKey: 'crack-test', results: [resultOf(areaOf('rod-1'))] }
    expect((await send(shop, path, { ...body, behind: true }).expect(409)).body.code).toBe('operation-not-reachable')
    await mark(shop, other, 'strip-wash')
    expect((await send(shop, path, body).expect(409)).body.code).toBe('operation-not-reachable')
    await send(shop, path, { ...body, behind: true }).expect(201)
  })
})

describe('a lot, sent again', () => {
  it('does not take back the one that was typed since', async () => {
    const { rows: [part] } = await shop.pool.query<{ id: string }>('SELECT id FROM part WHERE job_id = $1 AND lot = $2 LIMIT 1', [job.id, ''])
    const partId = part?.id ?? expect.fail('no part')
    const first = { reason: '', typedBy: shop.people.machinist.id, lots: [{ id: randomUUID(), partId, lot: 'P-1', deviceAt }] }
    await send(shop, to('lots'), first).expect(201)
    await send(shop, to('lots'), { reason: 'The box said so', lots: [{ id: randomUUID(), partId, lot: 'P-2' }] }, 'second').expect(201)
    expect((await send(shop, to('lots'), first).expect(201)).body).toEqual({ reopened: [] })
    const { rows } = await shop.pool.query('SELECT lot, (SELECT count(*)::int FROM part_lot WHERE part_id = part.id) AS typed FROM part WHERE id = $1', [partId])
    expect(rows).toEqual([{ lot: 'P-2', typed: 2 }])
    expect(await deviceAtOf('part_lot', first.lots[0]!.id)).toBe(deviceAt)
    expect((await send(shop, to('lots'), first, 'second').expect(409)).body).toMatchObject({ code: 'other-person', field: 'typedBy' })
    expect((await send(shop, to('lots'), { ...first, typedBy: shop.people.second.id }, 'second').expect(409)).body.code).toBe('already-exists')
  })
})

describe('a finding with its photograph, sent again', () => {
  const finding = { id: randomUUID(), operationKey: 'crack-test', requirementKey: null, title: 'Bolt broken off', sentence: '', stops: false, deviceAt }
  const raise = (body: object, who: 'machinist' | 'second' = 'machinist') => send(shop, to('findings'), body, who)

  it('is one finding, also after the owner has decided', async () => {
    const named = { ...finding, raisedBy: shop.people.machinist.id }
    await raise(named).expect(201)
    await decide(finding.id)
    expect((await raise(named).expect(201)).body).toMatchObject({ id: finding.id, state: 'decided' })
    expect(await deviceAtOf('finding', finding.id)).toBe(deviceAt)
    expect((await raise(named, 'second').expect(409)).body).toMatchObject({ code: 'other-person', field: 'raisedBy' })
    expect((await raise(finding, 'second').expect(409)).body.code).toBe('already-exists')
  })

  it('is one photograph, of whoever took it', async () => {
    const photograph = { ...photographOf('finding', finding.id, null), takenBy: shop.people.machinist.id, deviceAt }
    const first = await send(shop, to('photographs'), photograph).expect(201)
    expect((await send(shop, to('photographs'), photograph).expect(201)).body).toEqual(first.body)
    expect(await deviceAtOf('photograph', photograph.id)).toBe(deviceAt)
    expect((await send(shop, to('photographs'), photograph, 'second').expect(409)).body).toMatchObject({ code: 'other-person', field: 'takenBy' })
    const own = { ...photographOf('finding', finding.id, null, jpeg()), id: photograph.id }
    expect((await send(shop, to('photographs'), own, 'second').expect(409)).body.code).toBe('already-exists')
  })
})
