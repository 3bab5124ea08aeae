import { brotliDecompressSync, gunzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { signInCookie } from '../../support/event-stream.ts'
import { openJob, startShop, type TestShop } from '../../support/shop.ts'

let shop: TestShop
let cookie: string
let url: string
beforeAll(async () => {
  shop = await startShop()
  const { number } = await openJob(shop)
  cookie = await signInCookie(shop.app, shop.people.machinist)
  url = `/api/jobs/${number}/operations/receive-parts`
})
afterAll(() => shop.stop())

const ask = (accepted?: string) => shop.app.inject({ url, headers: { cookie, ...(accepted && { 'accept-encoding': accepted }) } })

describe('a long answer, for a tablet on a weak network,', () => {
  it.each([
    ['br', 'gzip, deflate, br, zstd', brotliDecompressSync],
    ['gzip', 'gzip', gunzipSync],
  ])('comes packed as %s to whoever takes that, a fifth as long at most, and holds the same', async (encoding, accepted, unpack) => {
    const [plain, packed] = [await ask(), await ask(accepted)]
    expect(plain.headers).not.toHaveProperty('content-encoding')
    expect(packed.headers).toMatchObject({ 'content-encoding': encoding, vary: expect.stringContaining('accept-encoding') as unknown })
    expect(packed.rawPayload.length).toBeLessThan(plain.rawPayload.length / 5)
    expect(JSON.parse(unpack(packed.rawPayload).toString())).toEqual(plain.json())
  })

  it('comes as it is to whoever takes it no other way', async () => {
    const answer = await ask('identity')
    expect(answer.headers).not.toHaveProperty('content-encoding')
    expect(answer.statusCode).toBe(200)
  })
})
