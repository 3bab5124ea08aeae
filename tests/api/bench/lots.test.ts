import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import {
  read, send, sign, signBody, startFloor, statesOf, testAll, tickAll, typeLots, workUpTo, type Floor,
} from '../../support/floor.ts'
import { openJob, type OpenedJob } from '../../support/shop.ts'

let shop: Floor
let job: OpenedJob
beforeAll(async () => {
  shop = await startFloor()
  job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  await workUpTo(shop, job, 'pistons-on-rods')
}, 120_000)
afterAll(() => shop.stop())

const set = (lots: object[], reason = '') => send(shop, `/api/jobs/${job.id}/lots`, { reason, lots })
const lotOf = async (place: string) =>
  (await read(shop, job, 'pistons-on-rods')).lots.find((one) => one.place === place) ?? expect.fail(`no lot place ${place}`)

describe('the lot of what goes in', () => {
  it('is asked for at its place, and the step is not signed without it', async () => {
    const page = await read(shop, job, 'pistons-on-rods')
    expect(page.lots.map(({ place, lot }) => [place, lot])).toEqual([['piston/1', ''], ['piston-pin/1', '']])
    await tickAll(shop, job, page)
    await testAll(shop, job, page)
    const { body } = await send(shop, `/api/jobs/${job.id}/sign-offs`, signBody(page)).expect(409)
    expect(body.detail).toContain('Without lot or serial: piston 1, piston pin 1')
    await typeLots(shop, job, page)
    await sign(shop, job, 'pistons-on-rods')
  })

  it('is changed only with a reason, opens what was signed with it again, and keeps the one before', async () => {
    const before = await lotOf('piston/1')
    const change = { id: randomUUID(), partId: before.partId, lot: 'P-77' }
    expect((await set([change]).expect(400)).body).toMatchObject({ field: 'reason' })
    const { body } = await set([change], 'The box said otherwise').expect(201)
    expect(body.reopened.map(({ key }: { key: string }) => key)).toEqual(['pistons-on-rods'])
    expect((await statesOf(shop, job))['pistons-on-rods']).toBe('re-opened')
    const after = await lotOf('piston/1')
    expect(after.lot).toBe('P-77')
    expect(after.history.map(({ lot, reason, by }) => [lot, reason, by])).toEqual([
      [before.lot, '', shop.people.machinist.name], ['P-77', 'The box said otherwise', shop.people.machinist.name],
    ])
    const { body: record } = await shop.as('owner').get(`/api/jobs/${job.number}/build-record`).expect(200)
    expect(record.parts.find(({ mark, kind }: { mark: string; kind: string }) => mark === after.mark && kind === after.place.split('/')[0]))
      .toMatchObject({ lot: after.lot, lots: after.history })
  })

  it('is refused for a part of another job', async () => {
    const other = await openJob(shop, { modelId: shop.models['Test single'] })
    const { partId } = await lotOf('piston/1')
    const { body } = await send(shop, `/api/jobs/${other.id}/lots`, {
      reason: '', lots: [{ id: randomUUID(), partId, lot: 'X' }],
    }).expect(422)
    expect(body).toMatchObject({ code: 'part-unknown', field: 'lots.0.partId' })
  })

  it('stays with a part that moves, and a part added with one has it at once', async () => {
    await send(shop, `/api/jobs/${job.id}/parts`, {
      id: randomUUID(), placementId: randomUUID(), mark: 'P9', description: '', lot: 'p-90', ownedBy: 'shop',
      place: 'piston/1', reason: 'Another piston',
    }).expect(201)
    expect(await lotOf('piston/1')).toMatchObject({ mark: 'P9', lot: 'p-90' })
  })

  it('shows a recall where it went, in any job, whatever its capitals, and where it no longer is', async () => {
    const find = async (search: string) =>
      (await shop.as('owner').get('/api/lots').query({ search }).expect(200)).body as {
        found: { jobNumber: number; mark: string; place: string | null; lot: string; replaced: boolean }[]
      }
    expect((await find('p-9')).found).toMatchObject([{ jobNumber: job.number, mark: 'P9', place: 'piston/1', replaced: false }])
    expect((await find('P-7')).found).toMatchObject([{ mark: 'P1', place: null, lot: 'P-77', replaced: false }])
    expect((await find('lot of PISTON/')).found).toMatchObject([{ mark: 'P1', place: null, replaced: true }])
    expect((await find('%')).found).toEqual([])
    expect((await find('')).found).toEqual([])
    await shop.as('machinist').get('/api/lots').query({ search: 'p' }).expect(403)
  })
})
