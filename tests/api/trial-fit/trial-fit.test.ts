import { randomUUID } from 'node:crypto'
import type { readTrialFit } from '@tenths/contract'
import { shortBlock } from '@tenths/domain'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { z } from 'zod'
import { verifyShop } from '../../../apps/api/src/verify/verify-shop.ts'
import {
  complete, countReadings, measure, read, send, sign, startFloor, statesOf, verdictOn, workUpTo, type Floor,
} from '../../support/floor.ts'
import { key, openJob, type OpenedJob } from '../../support/shop.ts'
import type { Who } from '../../support/stock.ts'

type Page = z.infer<(typeof readTrialFit)['answer']>

const tenth = 2_540

let shop: Floor
let job: OpenedJob
beforeAll(async () => { shop = await startFloor() })
afterAll(() => shop.stop())

async function look(who: Who = 'machinist'): Promise<Page> {
  const { body } = await shop.as(who).get(`/api/jobs/${job.number}/trial-fit`).expect(200)
  return body as Page
}

const lineOf = (page: Page, requirement: string) => page.lines.find((line) => line.requirement.key === requirement)!
const suggestionOf = (page: Page, title: string) => page.suggestions.find((suggestion) => suggestion.title === title)!
const apply = (suggestion: string, who: Who = 'machinist') =>
  send(shop, `/api/jobs/${job.id}/trial-fit/suggestions`, { suggestion }, who)

describe('a job of which nothing is measured', () => {
  it('is forecast from the drawing, with what was assumed and the why of every limit', async () => {
    job = await openJob(shop)
    for (const who of ['counter', 'machinist', 'owner'] as const) {
      const page = await look(who)
      expect(page.job).toMatchObject({ number: job.number, state: 'open' })
      expect(page.counts.fits).toBe(0)
      expect(Object.values(page.counts).reduce((sum, count) => sum + count)).toBe(page.lines.length)
      const pin = lineOf(page, 'pin-in-rod/1')
      expect(pin).toMatchObject({ basis: 'nominal', judgedAt: { key: 'hone-small-ends' } })
      expect(pin.assumed).toHaveLength(2)
      expect(pin.requirement.why.worked.length).toBeGreaterThan(0)
      expect(page.suggestions).toEqual([])
    }
    await shop.as('machinist').get('/api/jobs/999999/trial-fit').expect(404)
  })
})

describe('a job under way', () => {
  it('calls no conflict what is still to be bored and honed, and names the step', async () => {
    await workUpTo(shop, job, 'measure-block')
    // Bores as worn in: 0.030 in under the size that the new pistons ask for.
    await complete(shop, job, 'measure-block', ({ feature }, wanted) => (feature.startsWith('bore-') ? wanted - 300 * tenth : wanted))
    await sign(shop, job, 'measure-block')
    await workUpTo(shop, job, 'receive-parts')
    // Pistons from the box, the fifth and the third swapped by their sizes: 4 tenths over and under the others.
    await complete(shop, job, 'receive-parts', ({ place, feature }, wanted) => {
      if (feature !== 'skirt') return wanted
      return wanted + (place === 'piston/3' ? 4 : place === 'piston/5' ? -4 : 0) * tenth
    })
    await sign(shop, job, 'receive-parts')
    const page = await look()
    const first = lineOf(page, 'piston-in-bore/1')
    expect(first).toMatchObject({ standing: 'to-be-cut', basis: 'measured', verdict: { kind: 'outside', side: 'low' } })
    expect(first.cutAt).toMatch(/[Hh]one/)
    expect(page.suggestions.map(({ title }) => title)).not.toContain('Pistons to bores')
  }, 120_000)

  it('names a conflict with its remedy, first of all lines', async () => {
    await workUpTo(shop, job, 'hone-bores')
    // Every bore to the same target piston, but 3 and 5 were honed to each other’s.
    const { body: plan } = await shop.as('machinist').get(`/api/jobs/${job.number}/plan`).expect(200)
    expect(plan.requirements.length).toBeGreaterThan(50)
    await complete(shop, job, 'hone-bores', ({ feature }, wanted) =>
      wanted + (feature === 'bore-3' ? -8 : feature === 'bore-5' ? 8 : 0) * tenth)
    const page = await look()
    const line = lineOf(page, 'piston-in-bore/3')
    expect(line).toMatchObject({ standing: 'conflict', verdict: { kind: 'outside', side: 'low', remedy: { action: 'hone' } } })
    expect(page.lines.slice(0, page.counts.conflict).map(({ requirement }) => requirement.key)).toContain('piston-in-bore/3')
    expect(page.lines.slice(0, page.counts.conflict).every(({ standing }) => standing === 'conflict')).toBe(true)
  }, 120_000)
})

describe('a suggestion', () => {
  it('says which parts go where, what is gained, and which signatures would open again, before anything is done', async () => {
    const page = await look()
    const suggestion = suggestionOf(page, 'Pistons to bores')
    expect(suggestion.moves.map(({ mark, to, marking }) => [mark, to, marking])).toEqual(expect.arrayContaining([
      ['P3', 'piston/5', 'Mark piston P3 as cylinder 5.'], ['P5', 'piston/3', 'Mark piston P5 as cylinder 3.'],
    ]))
    expect(suggestion.moves).toHaveLength(2)
    expect(suggestion.after.worstDistance).toBeLessThan(suggestion.before.worstDistance)
    expect(suggestion.before.leastMargin).toBeLessThan(0)
    expect(suggestion.after.leastMargin).toBeGreaterThan(0)
    expect(suggestion.before.outside).toBe(2)
    expect(suggestion.after.outside).toBe(0)
    expect(suggestion.reopens.map((step) => step.key)).toEqual(['receive-parts'])
    expect((await statesOf(shop, job))['receive-parts']).toBe('signed')
  })

  it('is refused to the counter, and once a reading of its parts has changed', async () => {
    const { key: seen } = suggestionOf(await look(), 'Pistons to bores')
    await apply(seen, 'counter').expect(403)
    const { passes } = await read(shop, job, 'hone-bores')
    const number = passes.filter(({ feature }) => feature === 'bore-3').length + 1
    const size = passes.findLast(({ feature }) => feature === 'bore-3')!.readings[0]!.value
    await measure(shop, job, {
      operationKey: 'hone-bores', feature: shortBlock.bore(3), gaugeId: shop.exact.length, number, values: size + tenth,
    })
    const { body } = await apply(seen).expect(412)
    expect(body).toMatchObject({ code: 'edit-stale', field: 'suggestion' })
    expect(body.detail).toContain('Nothing was moved')
    const { rows } = await shop.pool.query('SELECT 1 FROM placement WHERE job_id = $1 AND reason <> $2', [job.id, ''])
    expect(rows).toHaveLength(0)
  })

  it('keeps its name while the rest of the job goes on', async () => {
    const { key: seen } = suggestionOf(await look(), 'Pistons to bores')
    const page = await read(shop, job, 'hone-bores')
    await send(shop, `/api/jobs/${job.id}/observations`, {
      operationKey: 'hone-bores',
      observations: page.operation.observations.map(({ key: item }) => ({ id: randomUUID(), item, outcome: 'not-seen', note: '' })),
    }).expect(201)
    await measure(shop, job, {
      operationKey: 'receive-parts', feature: shortBlock.pinDiameter(1), gaugeId: shop.exact.length, number: 2, values: 23_545_800,
    })
    expect(suggestionOf(await look(), 'Pistons to bores').key).toBe(seen)
    await sign(shop, job, 'receive-parts')
  })

  it('moves all its parts in one transaction and one event, swaps the clearances without a value typed, and re-opens what it named', async () => {
    const before = await read(shop, job, 'hone-bores')
    const readings = await countReadings(shop, job)
    const events = async () => (await shop.pool.query<{ kind: string }>(
      'SELECT kind FROM event WHERE job_id = $1 ORDER BY id', [job.id],
    )).rows.map(({ kind }) => kind)
    const eventsBefore = await events()
    const suggestion = suggestionOf(await look(), 'Pistons to bores')
    const once = key()
    const post = () => shop.as('machinist').post(`/api/jobs/${job.id}/trial-fit/suggestions`).set(once).send({ suggestion: suggestion.key })
    const { body } = await post().expect(201)
    expect(body.reopened).toEqual(suggestion.reopens)
    expect(body.markings).toEqual(suggestion.moves.map(({ marking }) => marking))
    expect((await events()).slice(eventsBefore.length)).toEqual(['apply-suggestion'])

    const again = await post().expect(201)
    expect(again.headers['idempotent-replay']).toBe('true')
    expect(again.body).toEqual(body)
    const { rows } = await shop.pool.query<{ reason: string; times: number }>(
      `SELECT reason, count(DISTINCT placed_at) AS times FROM placement WHERE job_id = $1 AND reason <> '' GROUP BY reason`, [job.id],
    )
    expect(rows).toHaveLength(1)
    expect(rows[0]?.reason).toMatch(/^Trial fit, pistons to bores: the worst is/)

    const after = await read(shop, job, 'hone-bores')
    const piston = (page: typeof after, cylinder: number) => page.placed.find(({ place }) => place === `piston/${cylinder}`)?.mark
    expect([piston(before, 3), piston(before, 5)]).toEqual(['P3', 'P5'])
    expect([piston(after, 3), piston(after, 5)]).toEqual(['P5', 'P3'])
    const shifted = (cylinder: number) =>
      verdictOn(after, `piston-in-bore/${cylinder}`).least! - verdictOn(before, `piston-in-bore/${cylinder}`).least!
    expect([shifted(3), shifted(5)]).toEqual([8 * tenth, -8 * tenth])
    expect(await countReadings(shop, job)).toBe(readings)
    expect((await statesOf(shop, job))['receive-parts']).toBe('re-opened')
    expect((await look()).suggestions.map(({ title }) => title)).not.toContain('Pistons to bores')
    await apply(suggestion.key).expect(412)
  }, 60_000)
})

describe('shells that change journals', () => {
  it('must be measured again in their new housing; until then they are not measured', async () => {
    await sign(shop, job, 'receive-parts')
    await complete(shop, job, 'hone-bores')
    await workUpTo(shop, job, 'main-bearings')
    const offs: Readonly<Record<string, number>> = { 'main-bearing/2': 4, 'main-bearing/4': -4 }
    const journals = await look()
    expect(lineOf(journals, 'main-bearing/2').basis).not.toBe('unknown')
    await complete(shop, job, 'main-bearings', ({ place }, wanted) => wanted + (offs[place] ?? 0) * tenth)
    const page = await look()
    // All journals and housings are alike here, so that no other place is better.
    expect(page.suggestions.map(({ title }) => title)).not.toContain('Shells to main journals')
    const partIn = (place: string, of: { placed: { place: string; partId: string }[] }) =>
      of.placed.find((one) => one.place === place)!.partId
    const before = await read(shop, job, 'main-bearings')
    expect(verdictOn(before, 'main-bearing/2').kind).not.toBe('not-measured')
    await send(shop, `/api/jobs/${job.id}/placements`, {
      reason: 'Shells of 2 and 4 changed',
      moves: [
        { id: randomUUID(), partId: partIn('main-bearing/2', before), place: 'main-bearing/4' },
        { id: randomUUID(), partId: partIn('main-bearing/4', before), place: 'main-bearing/2' },
      ],
    }).expect(201)
    const after = await read(shop, job, 'main-bearings')
    for (const journal of [2, 4]) {
      const verdict = verdictOn(after, `main-bearing/${journal}`)
      expect(verdict.kind).toBe('not-measured')
      expect(verdict.advice).toMatch(/^Main bearing \d: Main housing \d was measured anew, or is of another part/)
    }
    expect(verdictOn(after, 'main-bearing/1').kind).not.toBe('not-measured')
    await measure(shop, job, {
      operationKey: 'main-bearings', feature: shortBlock.mainBearing(2), gaugeId: shop.exact.length, number: 2,
      values: before.passes.find(({ partId }) => partId === partIn('main-bearing/1', before))!.readings[0]!.value,
    })
    expect(verdictOn(await read(shop, job, 'main-bearings'), 'main-bearing/2').kind).toBe('within')
  }, 120_000)

  it('leaves a shop whose every verdict can be recomputed', async () => {
    let jobs = 0
    for await (const { faults } of verifyShop(shop.pool)) {
      jobs += 1
      expect(faults).toEqual([])
    }
    expect(jobs).toBe(1)
  }, 60_000)
})
