import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { complete, read, send, sign, startFloor, type Floor, type TestJob } from '../../support/floor.ts'
import { openJob } from '../../support/shop.ts'
import type { Who } from '../../support/stock.ts'

let shop: Floor
let job: TestJob
beforeAll(async () => {
  shop = await startFloor()
  job = await openJob(shop)
})
afterAll(() => shop.stop())

async function told(who: Who) {
  const { body } = await shop.as(who).get('/api/me/re-openings').expect(200)
  return (body as { reOpenings: { signOffId: string }[] }).reOpenings
}

async function signThenTakeTickBack(by: Who): Promise<string> {
  await complete(shop, job, 'receive')
  const { id } = await sign(shop, job, 'receive')
  const { operation } = await read(shop, job, 'receive')
  await send(shop, `/api/jobs/${job.id}/observations`, {
    operationKey: 'receive', observations: [{ id: randomUUID(), item: operation.observations[0]?.key, outcome: 'not-seen', note: '' }],
  }, by).expect(201)
  return id
}

it('whoever signed is told that somebody else’s change opened the signature again, until they have seen it', async () => {
  const signOffId = await signThenTakeTickBack('second')
  const page = await read(shop, job, 'receive')
  expect(await told('machinist')).toEqual([{
    signOffId, jobNumber: job.number, operationKey: 'receive', title: page.operation.title, by: 'Cleo Machinist',
    reason: page.signOffs[0]?.reopened?.reason, at: expect.any(String),
  }])
  expect(await told('second')).toEqual([])
  // Nobody sees it for them.
  await send(shop, '/api/me/re-openings/seen', { signOffIds: [signOffId] }, 'second').expect(200)
  expect(await told('machinist')).toHaveLength(1)
  await send(shop, '/api/me/re-openings/seen', { signOffIds: [signOffId] }).expect(200)
  await send(shop, '/api/me/re-openings/seen', { signOffIds: [signOffId] }).expect(200)
  expect(await told('machinist')).toEqual([])
})

it('whoever opened their own signature again knows it already', async () => {
  await signThenTakeTickBack('machinist')
  expect(await told('machinist')).toEqual([])
})
