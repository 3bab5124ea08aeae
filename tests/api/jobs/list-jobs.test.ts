import type { QueryConfig } from 'pg'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { addCustomer, openJob, startShop, type OpenedJob, type TestShop } from '../../support/shop.ts'

let shop: TestShop
let now = new Date('2031-05-10T12:00:00Z')
let early: OpenedJob
let middle: OpenedJob
let late: OpenedJob
beforeAll(async () => {
  shop = await startShop({ now: () => now, timeZone: 'America/Chicago' })
  const rosa = await addCustomer(shop, { name: 'Rosa Piston' })
  const otto = await addCustomer(shop, { name: 'Otto Camshaft' })
  middle = await openJob(shop, { customerId: rosa, promisedOn: '2031-06-10' })
  early = await openJob(shop, { customerId: otto, promisedOn: '2031-05-20', modelId: shop.models['Test inline four'] })
  late = await openJob(shop, { customerId: rosa, promisedOn: '2031-05-09' })
})
afterAll(() => shop.stop())

interface Listed { number: number; late: boolean; stage: string | null; signed: number }
async function list(query: Record<string, string | number> = {}): Promise<{ jobs: Listed[]; total: number; pageSize: number }> {
  return (await shop.as('machinist').get('/api/jobs').query(query).expect(200)).body
}
const numbers = ({ jobs }: { jobs: Listed[] }) => jobs.map(({ number }) => number)

describe('the list of jobs', () => {
  it('has the nearest promise first, and says which are late', async () => {
    const listed = await list()
    expect(numbers(listed)).toEqual([late.number, early.number, middle.number])
    expect(listed.jobs.map((job) => job.late)).toEqual([true, false, false])
    expect(listed).toMatchObject({ total: 3, pageSize: 25 })
    expect(listed.jobs[0]).toMatchObject({ stage: 'intake', signed: 0 })
  })

  it('is searched by number, customer and engine', async () => {
    expect(numbers(await list({ search: 'camsh' }))).toEqual([early.number])
    expect(numbers(await list({ search: 'INLINE' }))).toEqual([early.number])
    expect(numbers(await list({ search: String(middle.number) }))).toEqual([middle.number])
    expect(await list({ search: 'nothing' })).toMatchObject({ jobs: [], total: 0 })
  })

  it('keeps closed jobs apart', async () => {
    await shop.pool.query(`UPDATE job SET state = 'handed-over' WHERE id = $1`, [late.id])
    expect(numbers(await list())).toEqual([early.number, middle.number])
    const closed = await list({ state: 'handed-over' })
    expect(closed.jobs).toMatchObject([{ number: late.number, late: false }])
    expect(numbers(await list({ state: 'all' }))).toEqual([early.number, middle.number, late.number])
    await shop.pool.query(`UPDATE job SET state = 'open' WHERE id = $1`, [late.id])
  })

  it('is paged', async () => {
    expect(await list({ page: 2 })).toMatchObject({ jobs: [], total: 3 })
  })

  it('costs the same number of statements for three jobs as for thirty', async () => {
    const statements = vi.spyOn(shop.pool, 'query') as unknown as { mock: { calls: [string | QueryConfig][] } }
    const paths = ['/api/jobs', '/api/benches', `/api/benches/${shop.benches['hone']}/queue`, `/api/jobs/${middle.number}`]
    const costs = async () => {
      const counts = []
      for (const path of paths) {
        const before = statements.mock.calls.length
        await shop.as('machinist').get(path).expect(200)
        counts.push(statements.mock.calls.length - before)
      }
      return counts
    }
    const few = await costs()
    expect(Math.min(...few)).toBeGreaterThan(1)
    const customerId = await addCustomer(shop)
    for (let index = 0; index < 27; index += 1) await openJob(shop, { customerId, promisedOn: '2031-08-01' })
    expect(await costs()).toEqual(few)
    expect(numbers(await list())).toHaveLength(25)
    expect(numbers(await list({ page: 2 }))).toHaveLength(5)
    vi.restoreAllMocks()
  })
})

describe('late', () => {
  const isLate = async (instant: string) => {
    now = new Date(instant)
    return (await list({ search: String(middle.number) })).jobs[0]?.late
  }

  it('is held against the shop’s own day, not the server’s', async () => {
    // Promised for 10 June; Chicago is five hours behind UTC in summer.
    expect(await isLate('2031-06-11T04:59:59Z')).toBe(false)
    expect(await isLate('2031-06-11T05:00:00Z')).toBe(true)
  })

  it('turns at the shop’s midnight on both days on which clocks are changed', async () => {
    // In Chicago clocks go forward on 9 March 2031 and back on 2 November 2031 (rule of the United States since 2007).
    await shop.pool.query(`UPDATE job SET promised_on = '2031-03-09' WHERE id = $1`, [middle.id])
    expect(await isLate('2031-03-10T04:59:59Z')).toBe(false)
    expect(await isLate('2031-03-10T05:00:00Z')).toBe(true)
    await shop.pool.query(`UPDATE job SET promised_on = '2031-11-02' WHERE id = $1`, [middle.id])
    expect(await isLate('2031-11-03T05:59:59Z')).toBe(false)
    expect(await isLate('2031-11-03T06:00:00Z')).toBe(true)
  })
})
