import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { send, startFloor, workUpTo, type Floor } from '../../support/floor.ts'
import { openJob } from '../../support/shop.ts'

let shop: Floor
beforeAll(async () => { shop = await startFloor() })
afterAll(() => shop.stop())

describe('a whole job', () => {
  it('goes from plan through readings and signatures to a sealed build record', async () => {
    const job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
    const early = await send(shop, `/api/jobs/${job.id}/handover`, {}, 'counter').expect(409)
    expect(early.body.code).toBe('job-not-finished')
    await workUpTo(shop, job, null)
    const { body: { findings } } = await shop.as('owner').get('/api/findings').expect(200)
    for (const { id } of findings) {
      await send(
        shop, `/api/findings/${id}/decision`,
        { decision: 'concession', reason: 'seen by the owner', low: null, high: null }, 'owner',
      )
        .expect(201)
    }
    const handed = await send(shop, `/api/jobs/${job.id}/handover`, {}, 'counter').expect(200)
    const { body: record } = await shop.as('counter').get(`/api/jobs/${job.number}/build-record`).expect(200)
    expect(record.sealHead).toBe(handed.body.sealHead)
    expect(record.job).toMatchObject({ state: 'handed-over', signed: record.job.operations, openFindings: 0 })
    const lines = record.operations.flatMap((operation: { lines: unknown[] }) => operation.lines)
    expect(lines.length).toBeGreaterThan(5)
    expect(
      new Set(lines.map((line: { verdict: { kind: string } }) => line.verdict.kind)),
    ).toEqual(new Set(['within']))
    const pdf = await shop.as('counter').get(
      `/api/jobs/${job.number}/build-record.pdf`,
    ).responseType('blob').expect(200)
    expect(pdf.headers['content-type']).toBe('application/pdf')
    expect(String((pdf.body as Buffer).subarray(0, 5))).toBe('%PDF-')
    const closed = await send(
      shop, `/api/jobs/${job.id}/observations`,
      {
        operationKey: 'receive',
        observations: [{ id: crypto.randomUUID(), item: 'tagged', outcome: 'seen', note: '' }],
      },
    )
    expect(closed.body.code).toBe('job-closed')
  }, 60_000)
})
