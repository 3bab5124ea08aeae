import { listPeople, readBuildRecord, readDesk, readJob, readStatus } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createApp } from '../../apps/api/src/app.ts'
import { createPool } from '../../apps/api/src/database/pool.ts'
import { verifyShop } from '../../apps/api/src/verify/verify-shop.ts'
import { signInAs, type Caller } from '../../prisma/demo/client.ts'
import { addDays } from '../../prisma/demo/days.ts'
import { jobs } from '../../prisma/demo/jobs/index.ts'
import { describeDemo, loadDemo, type DemoSummary } from '../../prisma/demo/load.ts'
import { people } from '../../prisma/demo/people.ts'
import { createTestDatabase, type TestDatabase } from '../support/database.ts'
import { testSecrets } from '../support/stock.ts'

/** One moment for the whole test, so that no midnight falls into it. */
const now = new Date()
const today = now.toISOString().slice(0, 10)
/** Requests after which the first load dies, in the middle of the first job. */
const REQUESTS_UNTIL_DEATH = 260

let database: TestDatabase
let pool: pg.Pool
let app: FastifyInstance
let summary: DemoSummary
let owner: Caller

beforeAll(async () => {
  database = await createTestDatabase()
  pool = createPool(database.serviceUrl)
  app = await createApp({ pool, secrets: testSecrets, logLevel: 'fatal', now: () => now })
  await expect(loadDemo({ app: dyingAfter(REQUESTS_UNTIL_DEATH), today })).rejects.toThrow('The power went.')
  summary = await loadDemo({ app, today })
  owner = await signInAs(app, people.odile)
}, 600_000)

afterAll(async () => {
  await app?.close()
  await pool?.end()
  await database?.drop()
})

/** The same service, but the process that loads into it dies after some requests. */
function dyingAfter(requests: number): FastifyInstance {
  let left = requests
  const inject = ((...given: Parameters<FastifyInstance['inject']>) => {
    left -= 1
    if (left < 0) throw new Error('The power went.')
    return app.inject(...given)
  }) as FastifyInstance['inject']
  return Object.create(app, { inject: { value: inject } }) as FastifyInstance
}

const rows = async <Row extends pg.QueryResultRow>(sql: string): Promise<Row[]> => (await pool.query<Row>(sql)).rows

describe('the demo shop', () => {
  it('Every demo value passes through the same use cases as a user’s; verify recomputes all of them from readings', async () => {
    const reports = []
    for await (const report of verifyShop(pool)) reports.push(report)
    expect(reports.flatMap(({ number, faults }) => faults.map((fault) => ({ number, ...fault })))).toEqual([])
    expect(reports).toHaveLength(jobs.length)
    expect(reports.reduce((sum, { seals }) => sum + seals, 0)).toBeGreaterThan(200)
  })

  it('came in by commands alone: one event and one kept answer for each, and nothing twice after a load that died', async () => {
    const [counts] = await rows<{ commands: number; events: number }>(
      'SELECT (SELECT count(*)::int FROM command_answer) AS commands, (SELECT count(*)::int FROM event) AS events',
    )
    expect(counts?.commands).toBeGreaterThan(1_000)
    expect(counts?.events).toBe(counts?.commands)
    expect(await rows(
      `SELECT job_id, operation_key FROM sign_off
        WHERE NOT EXISTS (SELECT FROM re_opening WHERE sign_off_id = sign_off.id)
        GROUP BY job_id, operation_key HAVING count(*) > 1`,
    )).toEqual([])
  })

  it('has twelve jobs or more at every stage, on five kinds of engine', async () => {
    const listed = await rows<{ stage: string | null; state: string; engine: string }>(
      `SELECT job.state, engine.name AS engine,
              (SELECT stage FROM operation_state
                WHERE job_id = job.id AND operation_state.state <> 'signed' ORDER BY ordinal LIMIT 1) AS stage
         FROM job JOIN engine ON engine.id = job.engine_id`,
    )
    expect(listed.length).toBeGreaterThanOrEqual(12)
    expect(new Set(listed.map(({ engine }) => engine)).size).toBeGreaterThanOrEqual(5)
    expect(new Set(listed.map(({ stage }) => stage))).toEqual(new Set([
      'intake', 'inspection', 'planning', 'machining', 'fitting', 'assembly', 'handover', null,
    ]))
    expect(listed.filter(({ state }) => state === 'handed-over')).toHaveLength(1)
    const kinds = await rows<{ work: string }>('SELECT DISTINCT work FROM job ORDER BY work')
    expect(kinds.map(({ work }) => work)).toEqual([
      'balancing', 'bore-and-hone', 'crank-regrind', 'full-rebuild', 'head-service', 'short-block',
    ])
  })

  it('shows an outside, a not proven and their remedies at a bench, and a concession of the owner', async () => {
    const tight = await verdictOn('tight-bushing', 'pin-in-rod/3')
    expect(tight).toMatchObject({
      kind: 'outside', side: 'low', least: 10_160, remedy: { action: 'hone', amount: 7_620, reaches: 'target' },
    })
    expect(await verdictOn('not-proven-bushing', 'pin-in-rod/5')).toMatchObject({ kind: 'not-proven', side: 'low' })
    expect(await verdictOn('late-boat', 'rod-bearing/6')).toMatchObject({ kind: 'outside', side: 'low' })
    const heavy = await verdictOn('mixed-pistons', 'piston-weight/3')
    expect(heavy).toMatchObject({ kind: 'outside', side: 'high', remedy: { action: 'lighten', reaches: 'target' } })
    expect(heavy?.remedy?.amount).toBe(heavy?.least)
    expect(heavy?.least).toBeGreaterThan(1_000)
    const record = await recordOf('conceded-bore')
    const conceded = record.operations.flatMap(({ lines }) => lines).filter(({ concession }) => concession !== null)
    expect(conceded).toMatchObject([{
      requirement: { key: 'piston-in-bore/7' }, verdict: { kind: 'outside', side: 'high' }, concession: { by: people.odile.name },
    }])
  })

  it('shows a second pass after honing once more, a correction beside what it corrects, and a piston in two places', async () => {
    const bore = (await recordOf('re-honed')).passes
      .filter(({ feature, operationKey }) => feature === 'bore-5' && operationKey === 'hone-bores')
    expect(bore).toHaveLength(2)
    const [corrected] = (await recordOf('support-rails')).passes
      .filter(({ readings }) => readings.some(({ supersedes }) => supersedes !== null))
    expect(corrected?.readings.filter(({ point }) => point === 'front/vertical')).toHaveLength(2)
    const piston = (await jobOf('re-honed')).parts.find(({ mark }) => mark === 'P2')
    expect(piston?.history.map(({ place }) => place)).toEqual(['piston/2', 'piston/7'])
  })

  it('has findings that wait for the owner, a late job and jobs promised this week', async () => {
    const desk = await owner.call(readDesk)
    const titles = desk.findings.map(({ title }) => title).join('\n')
    expect(titles).toMatch(/Rod bearing against its fillet: fouls/)
    expect(titles).toMatch(/Rod bearing against its fillet: unknown/)
    expect(titles).toMatch(/Piston in bore: maker’s sheet needed/)
    expect(desk.atRisk.filter(({ late }) => late).map(({ promisedOn }) => promisedOn)).toEqual([addDays(today, -6)])
    expect(desk.promisedThisWeek).toBeGreaterThan(0)
    // Hours were kept: some kinds of step run over their standard, some under, and no one works at two things at once.
    const used = desk.pace.filter(({ isUsed }) => isUsed)
    expect(used.length).toBeGreaterThan(5)
    expect(new Set(used.map(({ takenMinutes, standardMinutes }) => Math.sign(takenMinutes - standardMinutes)))).toEqual(new Set([-1, 1]))
    // What the load itself takes is milliseconds, and in parallel.
    const [overlaps] = await rows<{ count: number }>(
      `WITH stretch AS (SELECT * FROM work_time WHERE stopped_at > started_at + interval '1 minute')
       SELECT count(*)::integer AS count FROM stretch AS one JOIN stretch AS other
         ON one.person_id = other.person_id AND one.id < other.id
        AND one.started_at < other.stopped_at AND other.started_at < one.stopped_at`)
    expect(overlaps?.count).toBe(0)
    expect(desk.load.filter(({ operations }) => operations > 0).length).toBeGreaterThan(8)
  })

  it('has a full record of the job that was collected: every line within, every step signed', async () => {
    const record = await recordOf('collected')
    expect(record.handedOverAt).not.toBeNull()
    const lines = record.operations.flatMap((operation) => operation.lines)
    expect(lines.length).toBeGreaterThan(150)
    expect(new Set(lines.map(({ verdict }) => verdict.kind))).toEqual(new Set(['within']))
    for (const { signOffs } of record.operations) expect(signOffs.filter(({ reopened }) => reopened === null)).toHaveLength(1)
    expect(record.operations.some(({ signOffs }) => signOffs.some(({ by }) => by.length === 2))).toBe(true)
  })

  it('has a full rebuild whose valves, seats and head bolts are all within, by feelers, calipers, angle and pressure', async () => {
    const lines = (await recordOf('jetty-engine')).operations.flatMap((operation) => operation.lines)
    const measured = lines.filter(({ verdict }) => verdict.kind !== 'not-measured')
    for (const fit of ['exhaust-stem-in-guide', 'exhaust-seat-in-head', 'head-bolt-angle', 'intake-lash', 'leak-down', 'rod-bolt-set', 'intake-spring-load', 'crank-unbalance']) {
      expect(measured.map(({ requirement }) => requirement.fit)).toContain(fit)
    }
    expect(new Set(measured.map(({ verdict }) => verdict.kind))).toEqual(new Set(['within']))
  })

  it('prints who may sign in as what, and a link behind which a customer sees how far the job is', async () => {
    expect(await describeDemo({ app })).toEqual(summary)
    const roles = (await owner.call(listPeople)).people.map(({ name, roles: has }) => [name, [...has].sort()])
    const printed = summary.people.map(({ name, roles: has }) => [name, [...has].sort()])
    expect(Object.fromEntries(roles)).toEqual(Object.fromEntries(printed))
    const answer = await app.inject({ url: readStatus.path.replace(':token', String(summary.statusPath).slice('/s/'.length)) })
    expect(answer.statusCode).toBe(200)
    expect(answer.json()).toMatchObject({ stage: 'machining', finished: false, notes: [{}, {}] })
  })

  it('scatters as real parts do: hardly two honed bores read alike, and none is out of round or tapered past its limit', async () => {
    const bores = await rows<{ readings: string; spread: number }>(
      `SELECT string_agg(value::text, ' ' ORDER BY point) AS readings, max(value) - min(value) AS spread
         FROM reading JOIN pass ON pass.id = reading.pass_id
        WHERE pass.operation_key = 'hone-bores' GROUP BY pass.id`,
    )
    expect(bores.length).toBeGreaterThan(30)
    expect(new Set(bores.map(({ readings }) => readings)).size).toBeGreaterThan(bores.length * 0.8)
    expect(bores.filter(({ spread }) => spread === 0).length).toBeLessThan(bores.length * 0.2)
    expect(Math.max(...bores.map(({ spread }) => spread))).toBeLessThanOrEqual(12_700)
  })
})

async function numberOf(key: string): Promise<number> {
  const job = jobs.find((known) => known.key === key)
  const [row] = await rows<{ number: number }>(
    `SELECT job.number FROM job JOIN engine ON engine.id = job.engine_id WHERE engine.serial = '${job?.serial}'`,
  )
  return row?.number ?? 0
}

const jobOf = async (key: string) => owner.call(readJob, { params: { number: await numberOf(key) } })
const recordOf = async (key: string) => owner.call(readBuildRecord, { params: { number: await numberOf(key) } })
const verdictOn = async (key: string, requirement: string) => (await recordOf(key)).operations
  .flatMap(({ lines }) => lines).find((line) => line.requirement.key === requirement)?.verdict
