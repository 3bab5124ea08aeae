import { createHash, randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { complete, read, send, sign, startFloor, workUpTo, type Floor } from '../../support/floor.ts'
import { jpeg, jpegWithCameraData, photographOf } from '../../support/photograph.ts'
import { openJob, type OpenedJob } from '../../support/shop.ts'
import { copyOf, runVerify } from '../../support/tampering.ts'

let shop: Floor
let job: OpenedJob
beforeAll(async () => {
  shop = await startFloor()
  job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  await workUpTo(shop, job, 'crack-test')
}, 60_000)
// The last test closes the shop, so that copies of its records can be altered.
afterAll(() => shop.database.drop())

const keep = (body: object) => send(shop, `/api/jobs/${job.id}/photographs`, body)
const bytesOf = (id: string) => shop.as('counter').get(`/api/photographs/${id}`).buffer(true)

describe('a photograph', () => {
  it('is kept as it was sent, once, and shown to people of the shop only', async () => {
    const body = photographOf('inspection', 'rod-1', 'crack-test')
    const sha256 = createHash('sha256').update(jpeg()).digest('hex')
    const { body: kept } = await keep(body).expect(201)
    expect(kept).toMatchObject({ sha256, subject: 'inspection', subjectKey: 'rod-1', by: shop.people.machinist.name })
    expect(kept).not.toHaveProperty('data')
    await keep(body).expect(201)
    expect((await read(shop, job, 'crack-test')).photographs).toHaveLength(1)

    const shown = await bytesOf(body.id).expect(200).expect('content-type', 'image/jpeg').expect('x-content-type-options', 'nosniff')
    expect(Buffer.compare(shown.body as Buffer, jpeg())).toBe(0)
    await shop.as('counter').get(`/api/photographs/${body.id}`).set('if-none-match', `"${sha256}"`).expect(304)
    await shop.anonymous().get(`/api/photographs/${body.id}`).expect(401)
    await shop.as('owner').get(`/api/photographs/${randomUUID()}`).expect(404)
    expect((await keep({ ...body, data: Buffer.concat([jpeg(), Buffer.from('x')]).toString('base64') }).expect(409)).body)
      .toMatchObject({ code: 'already-exists' })
  })

  it('is refused when it is none, too large, or still says where it was taken', async () => {
    const of = (bytes: Buffer) => photographOf('inspection', 'rod-1', 'crack-test', bytes)
    const detail = async (bytes: Buffer) => (await keep(of(bytes)).expect(400)).body.detail as string
    expect(await detail(Buffer.from('<svg onload="alert(1)"></svg>'.padEnd(64)))).toContain('no photograph')
    expect(await detail(jpegWithCameraData())).toContain('where and with what')
    const large = await keep(of(Buffer.concat([jpeg(), Buffer.alloc(1_572_864)])))
    expect(large.status).toBe(400)
    await keep(of(Buffer.concat([jpeg(), Buffer.alloc(3_000_000)]))).expect(400)
    expect((await read(shop, job, 'crack-test')).photographs).toHaveLength(1)
  })

  it('belongs to something that this job has', async () => {
    await keep(photographOf('inspection', 'sump', 'crack-test')).expect(404)
    await keep(photographOf('observation', 'clean', 'no-such-step')).expect(404)
    await keep(photographOf('finding', randomUUID(), null)).expect(404)
    const { body: whole } = await shop.as('counter').get(`/api/jobs/${job.number}`).expect(200)
    const intake = photographOf('intake-item', whole.intake[0].id as string, null)
    await send(shop, `/api/jobs/${job.id}/photographs`, intake, 'counter').expect(201)
    const { body: all } = await shop.as('owner').get(`/api/jobs/${job.number}/photographs`).expect(200)
    expect(all.photographs.map(({ subject }: { subject: string }) => subject)).toEqual(['inspection', 'intake-item'])
  })

  it('of a finding stands beside it, at the desk and at the bench', async () => {
    const finding = {
      id: randomUUID(), operationKey: 'crack-test', requirementKey: null, title: 'Scored web', sentence: '', stops: false,
    }
    await send(shop, `/api/jobs/${job.id}/findings`, finding).expect(201)
    const body = photographOf('finding', finding.id, null)
    await keep(body).expect(201)
    const { body: listed } = await shop.as('owner').get('/api/findings').expect(200)
    const mine = listed.findings.find(({ id }: { id: string }) => id === finding.id)
    expect(mine.photographs.map(({ id }: { id: string }) => id)).toEqual([body.id])
    const page = await read(shop, job, 'crack-test')
    expect(page.findings.find(({ id }) => id === finding.id)?.photographs).toHaveLength(1)
    expect(page.photographs.map(({ subject }) => subject)).toContain('finding')
  })

  it('is part of the seal: verify finds one whose bytes were altered, and a result or a lot that was', async () => {
    await complete(shop, job, 'crack-test')
    await sign(shop, job, 'crack-test')
    await workUpTo(shop, job, 'pistons-on-rods')
    await shop.app.close()
    await shop.pool.end()
    const tampered = async (sql: string) => {
      const copy = await copyOf(shop.database)
      try {
        if (sql !== '') expect((await copy.tamper(sql)).rowCount).toBeGreaterThan(0)
        return await runVerify(copy.url)
      } finally {
        await copy.drop()
      }
    }
    expect(await tampered('')).toMatchObject({ code: 0 })
    const altered = await tampered(`UPDATE photograph SET bytes = bytes || '\\x00' WHERE subject = 'inspection'`)
    expect(altered).toMatchObject({ code: 1 })
    expect(altered.output).toContain('Crack and pressure test: seal')
    expect(altered.output).toContain('a photograph is not the one that was sealed')
    expect(await tampered(`DELETE FROM photograph WHERE subject = 'inspection'`)).toMatchObject({ code: 1 })
    expect((await tampered(`UPDATE inspection SET note = 'other'`)).output).toContain('is not as it was sealed')
    expect((await tampered(`UPDATE part_lot SET lot = 'other'`)).output)
      .toContain('is not the one that was sealed')
    expect((await tampered(`UPDATE observation SET since = since - interval '1 hour' WHERE since IS NOT NULL`)).code).toBe(1)
  }, 120_000)
})
