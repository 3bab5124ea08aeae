import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import {
  complete, passBody, read, resultOf, send, sign, signBody, startFloor, workUpTo, type Floor,
} from '../../support/floor.ts'
import { openJob, type OpenedJob } from '../../support/shop.ts'

let shop: Floor
let job: OpenedJob
beforeAll(async () => {
  shop = await startFloor()
  job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
}, 60_000)
afterAll(() => shop.stop())

const refusalOf = async (path: string, body: object) =>
  (await send(shop, `/api/jobs/${job.id}/${path}`, body).expect(409)).body.code as string

describe('a wash is a gate', () => {
  it.each([
    ['strip-wash', 'crack-test'], ['wash-for-measuring', 'main-bearings'], ['final-wash', 'pistons-on-rods'],
  ])('nothing is measured, seen, tested or assembled before the wash before it is signed on its own ticks: %s, then %s', async (wash, next) => {
    await workUpTo(shop, job, wash)
    const page = await read(shop, job, next)
    expect(page.waitsFor.map(({ key }) => key)).toContain(wash)
    const item = page.operation.observations[0]?.key
    const observations = [{ id: randomUUID(), item, outcome: 'not-seen', note: '' }]
    expect(await refusalOf('observations', { operationKey: next, observations })).toBe('operation-not-reachable')
    const [area] = page.operation.inspections ?? []
    if (area !== undefined) {
      expect(await refusalOf('inspections', { operationKey: next, results: [resultOf(area)] })).toBe('operation-not-reachable')
    }
    const [feature] = page.operation.features
    if (feature !== undefined) {
      const body = passBody(page, { operationKey: next, feature, gaugeId: shop.exact.length, values: 60_000_000 })
      expect(await refusalOf('readings', body)).toBe('operation-not-reachable')
    }
    expect(await refusalOf('sign-offs', signBody(page))).toBe('operation-not-reachable')

    const washing = await read(shop, job, wash)
    expect(washing.operation.observations.length).toBeGreaterThan(0)
    expect(await refusalOf('sign-offs', signBody(washing))).toBe('operation-not-complete')
    await complete(shop, job, wash)
    await sign(shop, job, wash)
  }, 120_000)
})
