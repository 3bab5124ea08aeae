import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { shortBlock } from '@tenths/domain'
import { addGauge, passBody, read, send, startFloor, workUpTo, type Floor, type OperationPage } from '../../support/floor.ts'
import { openJob, type OpenedJob } from '../../support/shop.ts'
import type { Who } from '../../support/stock.ts'

const tenth = 2_540
const step = 'measure-crank'
const journal = shortBlock.mainJournal(1)
const number = 'neighbour.journal.intake'
const after = 'neighbour.journal.finished'

let shop: Floor
let job: OpenedJob
let gauge: string
let nominal: number
beforeAll(async () => {
  shop = await startFloor()
  job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  gauge = await addGauge(shop, { mark: 'MT', resolution: 1, standardUncertainty: tenth / 2 })
  await workUpTo(shop, job, step)
  nominal = sizesAt(await read(shop, job, step))
}, 60_000)
afterAll(() => shop.stop())

const sizesAt = (page: OperationPage) => page.features.find(({ feature }) => feature === journal.feature)!.nominal!

interface Body { revision: number; groups: { key: string; numbers: { key: string; value: number; starter: number; changes: { from: number; to: number; reason: string; by: string }[] }[] }[] }
const list = async (who: Who = 'owner') => (await shop.as(who).get('/api/plausibility').expect(200)).body as Body
const inList = (body: Body, key: string) => body.groups.flatMap(({ numbers }) => numbers).find((one) => one.key === key)!
const revise = (numbers: Record<string, number>, basedOn: number, who: Who = 'owner', reason = 'Old cranks are worn more than that.') =>
  send(shop, '/api/plausibility', { numbers, reason, basedOn }, who)

/** A pass over the journal whose values lie that many tenths off nominal. */
async function take(tenths: readonly number[], { who = 'machinist', passNumber, confirmed = [] }: { who?: Who; passNumber: number; confirmed?: readonly number[] }) {
  const page = await read(shop, job, step, who)
  const body = passBody(page, { operationKey: step, feature: journal, gaugeId: gauge, number: passNumber, values: nominal })
  return send(shop, `/api/jobs/${job.id}/readings`, {
    ...body,
    readings: body.readings.map((reading, index) => {
      const value = nominal + Math.round((tenths[index] ?? 0) * tenth)
      return { ...reading, value, typed: `${value / 1_000_000} mm`, confirmed: confirmed.includes(index) }
    }),
  }, who)
}

const readingsOf = async (passNumber: number) => (await read(shop, job, step)).passes
  .find((pass) => pass.feature === journal.feature && pass.number === passNumber)!.readings

describe('the numbers by which values are doubted', () => {
  it('are the starter’s until the owner changes one, with a reason and under his name', async () => {
    expect((await read(shop, job, step)).numbers).toBeUndefined()
    expect(inList(await list('machinist'), number)).toMatchObject({ value: 6 * tenth, starter: 6 * tenth, changes: [] })
    for (const who of ['machinist', 'counter'] as const) {
      expect((await revise({ [number]: 10 * tenth }, 0, who)).body).toMatchObject({ code: 'not-allowed' })
    }
    expect((await take([0, 0, 8, 1], { passNumber: 1 })).body).toMatchObject({
      code: 'value-implausible', field: 'readings.2.typed', detail: expect.stringContaining('middle of its neighbours'),
    })

    const { body } = await revise({ [number]: 10 * tenth }, 0).expect(201)
    expect(body.revision).toBe(1)
    expect(inList(await list(), number)).toMatchObject({
      value: 10 * tenth, starter: 6 * tenth,
      changes: [{ from: 6 * tenth, to: 10 * tenth, reason: 'Old cranks are worn more than that.', by: shop.people.owner.name }],
    })
    const { rows } = await shop.pool.query(`SELECT kind, person.name AS by FROM event JOIN person ON person.id = person_id ORDER BY event.id DESC LIMIT 1`)
    expect(rows).toEqual([{ kind: 'revise-plausibility', by: shop.people.owner.name }])
  })

  it('reach the bench with the step, and the same value is asked about no more', async () => {
    expect((await read(shop, job, step)).numbers).toEqual({ [number]: 10 * tenth })
    const taken = await take([0, 0, 8, 1], { passNumber: 1 })
    expect(taken.status, JSON.stringify(taken.body)).toBe(201)
    expect((await readingsOf(1)).map(({ doubt }) => doubt)).toEqual([undefined, undefined, undefined, undefined])
  })

  it('stay with a reading that was doubted by them, in the words that were said', async () => {
    await revise({ [number]: tenth, [after]: tenth }, 1, 'owner', 'To be looked at more closely.').expect(201)
    const taken = await take([0, 0, 3, 0], { passNumber: 2, confirmed: [2] })
    expect(taken.status, JSON.stringify(taken.body)).toBe(201)
    const doubted = (await readingsOf(2)).filter(({ confirmed }) => confirmed)
    expect(doubted).toMatchObject([{ doubt: expect.stringMatching(/^0\.0003 in from the middle of its neighbours/) }])
    await revise({ [number]: 10 * tenth, [after]: 6 * tenth }, 2).expect(201)
    const { rows } = await shop.pool.query<{ numbers: object; doubt: string }>(
      `SELECT numbers, doubt FROM reading JOIN plausibility_revision ON revision = doubted_by WHERE reading.id = $1`, [doubted[0]!.id])
    expect(rows).toEqual([{ numbers: { [number]: tenth, [after]: tenth }, doubt: doubted[0]!.doubt }])
    const { body: record } = await shop.as('owner').get(`/api/jobs/${job.number}/build-record`).expect(200)
    expect(JSON.stringify(record.passes)).toContain('from the middle of its neighbours')
  })

  it('are refused at their place in words, out of bounds or out of order, and stay as they were', async () => {
    const refused = async (numbers: Record<string, number>) => (await revise(numbers, 3)).body as { code: string; field: string; detail: string }
    expect(await refused({ [number]: -tenth })).toMatchObject({ code: 'value-out-of-range', field: `numbers.${number}`, detail: expect.stringContaining('is a figure from') })
    expect(await refused({ 'range.end-play.low': 25 * 10 * tenth })).toMatchObject({
      code: 'value-out-of-range', field: 'numbers.range.end-play.low', detail: '“Crankshaft end play, from” (0.0250 in) must lie below “Crankshaft end play, to” (0.0200 in).',
    })
    expect(await refused({ 'magnitude.unitRatio.low': 2 })).toMatchObject({ code: 'rule-unknown' })
    expect(await refused({ [number]: 10 * tenth })).toMatchObject({ code: 'body-invalid', field: 'numbers' })
    expect((await revise({ [number]: tenth }, 3, 'owner', ' ')).body).toMatchObject({ field: 'reason' })
    expect((await revise({ [number]: 9 * tenth }, 2)).body).toMatchObject({ code: 'edit-stale', field: 'basedOn' })
    expect((await list()).revision).toBe(3)
  })

  it('that two people change at once take one change, and the other is told', async () => {
    const both = await Promise.all([revise({ agreement: 2 }, 3), revise({ agreement: 3 }, 3)])
    expect(both.map(({ status }) => status).sort()).toEqual([201, 412])
    expect((await list()).revision).toBe(4)
  })

  it('go back to the starter’s, and the step carries none of them', async () => {
    await revise({ [number]: 6 * tenth, agreement: 1.5 }, 4, 'owner', 'As it was.').expect(201)
    expect((await read(shop, job, step)).numbers).toBeUndefined()
    expect(inList(await list(), number).changes.map(({ from, to }) => [from, to])).toEqual(
      [[10 * tenth, 6 * tenth], [tenth, 10 * tenth], [10 * tenth, tenth], [6 * tenth, 10 * tenth]])
  })

  it('say how far a gauge’s zero may drift', async () => {
    const { revision } = await list()
    await revise({ zeroDrift: 3 * tenth }, revision).expect(201)
    const check = await send(shop, `/api/jobs/${job.id}/zero-checks`, { id: randomUUID(), gaugeId: gauge, deviation: 2 * tenth, typed: '+2' })
    expect(check.body).toMatchObject({ hasDrifted: false, allowed: 3 * tenth })
  })
})

describe('what a second person reads', () => {
  it('is asked about beyond one and a half times the joint uncertainty; both passes stay, and a third that bears one out is not asked about', async () => {
    const last = Math.max(...(await read(shop, job, step)).passes.filter(({ feature }) => feature === journal.feature).map(({ number: one }) => one))
    expect((await take([0, 0, 0, 1], { passNumber: last + 1 })).status).toBe(201)
    // k·u is one tenth of each: 1.5 · √2 is 2.1 tenths
    const differing = [-2, -3, -2, -1]
    const asked = await take(differing, { who: 'second', passNumber: last + 2 })
    expect(asked.body).toMatchObject({ code: 'value-implausible', field: 'readings.1.typed', detail: expect.stringContaining('take a third') })
    expect((await take(differing, { who: 'second', passNumber: last + 2, confirmed: [1] })).status).toBe(201)
    expect((await readingsOf(last + 2)).filter(({ doubt }) => doubt !== undefined)).toHaveLength(1)
    expect(await readingsOf(last + 1)).toHaveLength(4)
    // the owner's agree with the second person's, and the one that differed with the machinist's: against the pass before
    // it, it has grown, which this shop does not ask about
    await revise({ 'growth.afterCut': 10 * tenth }, (await list()).revision).expect(201)
    expect((await take([-2, 0, -2, -1], { who: 'owner', passNumber: last + 3 })).status).toBe(201)
  })
})
