import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { key, openJob, startShop, type OpenedJob, type TestShop } from '../../support/shop.ts'

let shop: TestShop
let near: OpenedJob
let far: OpenedJob
beforeAll(async () => {
  shop = await startShop({ now: () => new Date('2031-05-10T12:00:00Z') })
  far = await openJob(shop, { promisedOn: '2031-07-01' })
  near = await openJob(shop, { promisedOn: '2031-05-01' })
})
afterAll(() => shop.stop())

const queue = async (kind: string) => (await shop.as('machinist').get(`/api/benches/${shop.benches[kind]}/queue`).expect(200)).body

describe('benches', () => {
  it('say how many operations wait at each: those that can be taken in hand', async () => {
    const { body } = await shop.as('machinist').get('/api/benches').expect(200)
    const waiting = Object.fromEntries(body.benches.map(({ kind, waiting }: { kind: string; waiting: number }) => [kind, waiting]))
    expect(waiting['counter']).toBe(2)
    expect(waiting['hone']).toBe(0)
  })

  it('list what can be done first, the nearest promise first, with what is late', async () => {
    const { bench, entries } = await queue('counter')
    expect(bench).toMatchObject({ kind: 'counter', waiting: 2 })
    expect(entries.slice(0, 2)).toMatchObject([
      { jobNumber: near.number, key: 'receive', state: 'ready', late: true, engineName: 'Test V8' },
      { jobNumber: far.number, key: 'receive', state: 'ready', late: false },
    ])
    const hone = await queue('hone')
    expect(hone.bench.waiting).toBe(0)
    expect(hone.entries.map(({ key: operation, state }: { key: string; state: string }) => [operation, state])).toContainEqual(['hone-bores', 'waiting'])
  })

  it('drop what is signed and what belongs to a closed job', async () => {
    await shop.pool.query(`UPDATE job SET state = 'handed-over' WHERE id = $1`, [near.id])
    await shop.pool.query(`UPDATE operation_state SET state = 'signed' WHERE job_id = $1 AND operation_key = 'receive'`, [far.id])
    const { entries } = await queue('counter')
    expect(entries.filter(({ key: operation }: { key: string }) => operation === 'receive')).toEqual([])
  })

  it('are added by the owner, each name once; an unknown one is not found', async () => {
    const bench = { id: randomUUID(), name: 'Second hone', kind: 'hone' }
    const added = await shop.as('owner').post('/api/benches').set(key()).send(bench).expect(201)
    expect(added.body).toEqual({ ...bench, waiting: 0 })
    const twin = await shop.as('owner').post('/api/benches').set(key()).send({ ...bench, id: randomUUID() }).expect(409)
    expect(twin.body).toMatchObject({ code: 'already-exists', field: 'name' })
    await shop.as('machinist').get(`/api/benches/${randomUUID()}/queue`).expect(404)
  })
})

describe('gauges', () => {
  it('are listed by mark with what they resolve, and added by the owner, each mark once', async () => {
    const gauge = {
      id: randomUUID(), mark: 'M9', name: 'Micrometer 100–125 mm', kind: 'micrometer', quantity: 'length', resolution: 1_000,
      analogue: false, clockwiseIsSmaller: false, standardUncertainty: 900.5, calibratedUntil: '2032-02-29', retired: false,
    }
    await shop.as('owner').post('/api/gauges').set(key()).send(gauge).expect(201)
    const { body } = await shop.as('machinist').get('/api/gauges').expect(200)
    expect(body.gauges.map(({ mark }: { mark: string }) => mark)).toEqual(['B1', 'D1', 'F1', 'M1', 'M9', 'P1'])
    expect(body.gauges[4]).toEqual(gauge)
    const twin = await shop.as('owner').post('/api/gauges').set(key()).send({ ...gauge, id: randomUUID() }).expect(409)
    expect(twin.body.field).toBe('mark')
  })
})
