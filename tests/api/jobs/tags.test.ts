import { readTagText } from '@tenths/contract'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { complete, sign, startFloor, workUpTo, type Floor } from '../../support/floor.ts'
import { openJob, type OpenedJob } from '../../support/shop.ts'

let shop: Floor
let job: OpenedJob
beforeAll(async () => {
  shop = await startFloor()
  job = await openJob(shop)
})
afterAll(() => shop.stop())

const next = (query: Record<string, string> = {}, number = job.number) =>
  shop.as('machinist').get(`/api/jobs/${number}/next-step`).query(query)
const stepOf = async (query?: Record<string, string>) => (await next(query).expect(200)).body.step as { key: string; reachable: boolean }

describe('a tag', () => {
  it('is printed for the job and for each of its parts, with a code that is read back and needs a sign-in', async () => {
    const { body } = await shop.as('counter').get(`/api/jobs/${job.number}/part-tags`).expect(200)
    const { parts } = body as { parts: { mark: string; place: string; address: string; qr: string }[] }
    const rod = parts.find(({ mark }) => mark === 'R3')
    expect(rod).toMatchObject({ place: 'rod/3', qr: expect.stringContaining('<svg') })
    expect(readTagText(rod?.address ?? '')).toMatchObject({ jobNumber: job.number, mark: 'R3' })
    expect(new Set(parts.map(({ address }) => address)).size).toBe(parts.length)
    await shop.anonymous().get(`/api/jobs/${job.number}/part-tags`).expect(401)
  })

  it('of the job leads to its next step, at the bench where it was scanned if that can be done', async () => {
    expect(await stepOf()).toMatchObject({ key: 'receive', reachable: true })
    expect(await stepOf({ bench: shop.benches['hone'] ?? '' })).toMatchObject({ key: 'receive' })
    await complete(shop, job, 'receive')
    await sign(shop, job, 'receive')
    expect((await stepOf()).key).not.toBe('receive')
  })

  it('of a part leads to the next step that measures it where it sits now', async () => {
    await workUpTo(shop, job, 'hone-small-ends')
    expect(await stepOf({ mark: 'R3', bench: shop.benches['pin-hone'] ?? '' })).toMatchObject({ key: 'hone-small-ends', reachable: true })
    // Marks are read without regard to capitals: some scanners type as if the shift key were held.
    expect(await stepOf({ mark: 'r3', bench: shop.benches['pin-hone'] ?? '' })).toMatchObject({ key: 'hone-small-ends' })
    // All that measures the block is signed by now.
    expect(await stepOf({ mark: 'B1' })).toBeNull()
  }, 120_000)

  it('that nobody here printed is refused with a sentence', async () => {
    expect((await next({}, 9_999).expect(404)).body.detail).toBe('There is no job 9999 in this shop: the tag may be another shop’s.')
    expect((await next({ mark: 'R99' }).expect(422)).body).toMatchObject({
      code: 'part-unknown', detail: `Job ${job.number} has no part R99: the tag may be another shop’s.`,
    })
  })
})
