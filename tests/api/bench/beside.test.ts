import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { shortBlock } from '@tenths/domain'
import { measure, read, startFloor, statesOf, verdictOn, workUpTo, type Floor } from '../../support/floor.ts'
import { openJob } from '../../support/shop.ts'

const tenth = 2_540

let shop: Floor
beforeAll(async () => { shop = await startFloor() })
afterAll(() => shop.stop())

describe('readings taken in place', () => {
  it('a bore honed again after its ring gaps were signed re-opens them, and the gaps are to be measured again', async () => {
    const job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
    await workUpTo(shop, job, 'main-bearings')
    const signed = await read(shop, job, 'ring-gaps')
    expect(verdictOn(signed, 'top-ring-end-gap/1').kind).toBe('within')
    const gap = signed.passes.find(({ feature }) => feature === 'end-gap')
    const boreAt = signed.placed.find(({ place }) => place === 'block')?.partId
    expect(gap?.beside).toEqual([{ partId: boreAt, feature: 'bore-1', pass: 2 }])

    const hone = await read(shop, job, 'hone-bores')
    const size = hone.passes.findLast(({ feature }) => feature === 'bore-1')?.readings[0]?.value ?? 0
    const { answer } = await measure(shop, job, {
      operationKey: 'hone-bores', feature: shortBlock.bore(1), gaugeId: shop.exact.length, number: 3,
      values: size + tenth,
    })
    expect((answer as { reopened: { key: string }[] }).reopened.map(({ key }) => key))
      .toEqual(expect.arrayContaining(['hone-bores', 'ring-gaps']))
    expect(await statesOf(shop, job)).toMatchObject({ 'ring-gaps': 're-opened' })
    const after = await read(shop, job, 'ring-gaps')
    expect(verdictOn(after, 'top-ring-end-gap/1')).toMatchObject({
      kind: 'not-measured', advice: expect.stringMatching(/Bore 1 was measured anew/) as string,
    })
    // what does not touch the bore keeps its word
    expect(verdictOn(after, 'top-ring-side-clearance/1').kind).toBe('within')
  }, 60_000)
})
