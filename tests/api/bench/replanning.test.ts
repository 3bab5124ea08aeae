import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { countReadings, send, startFloor, statesOf, workUpTo, type Floor } from '../../support/floor.ts'
import { openJob } from '../../support/shop.ts'

let shop: Floor
beforeAll(async () => { shop = await startFloor() })
afterAll(() => shop.stop())

async function definitionHashes(jobId: string): Promise<Record<string, string>> {
  const { rows } = await shop.pool.query<{ key: string; hash: string }>(
    'SELECT operation_key AS key, definition_hash AS hash FROM operation_state WHERE job_id = $1', [jobId],
  )
  return Object.fromEntries(rows.map(({ key, hash }) => [key, hash]))
}

describe('planning a job again', () => {
  it('Changing the duty of a half-signed job keeps all readings, re-opens exactly the operations whose definition hash changed, and names them before the change is applied', async () => {
    const job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
    await workUpTo(shop, job, 'wash-for-measuring')
    const states = await statesOf(shop, job)
    const hashes = await definitionHashes(job.id)
    const readings = await countReadings(shop, job)
    const { body: plan } = await shop.as('owner').get(`/api/jobs/${job.number}/plan`).expect(200)
    const wish = { duty: 'hard-boost', parts: plan.parts, options: plan.options, sheets: plan.sheets }

    const { body: preview } = await send(
      shop, `/api/jobs/${job.id}/plan/preview`, wish, 'counter',
    ).expect(200)
    const named = preview.changes.filter((change: { reopens: boolean }) => change.reopens)
      .map((change: { key: string }) => change.key).sort()
    expect(await definitionHashes(job.id)).toEqual(hashes)
    expect(await statesOf(shop, job)).toEqual(states)

    const applied = await send(
      shop, `/api/jobs/${job.id}/plan`, { ...wish, reason: 'Blower ordered', basedOn: 1 }, 'owner',
    ).expect(201)
    expect(applied.body).toMatchObject({ revision: 2, changes: preview.changes })
    const after = await definitionHashes(job.id)
    const changed = Object.keys(after).filter(
      (key) => hashes[key] !== undefined && hashes[key] !== after[key],
    )
    const expected = changed.filter((key) => states[key] === 'signed').sort()
    expect(expected).toContain('crack-test')
    expect(expected).toContain('hone-bores')
    expect(named).toEqual(expected)
    const now = await statesOf(shop, job)
    expect(Object.keys(now).filter((key) => now[key] === 're-opened').sort()).toEqual(expected)
    const kept = Object.keys(states).filter((key) => states[key] === 'signed' && !expected.includes(key))
    expect(kept.length).toBeGreaterThan(3)
    for (const key of kept) expect(now[key], key).toBe('signed')
    expect(await countReadings(shop, job)).toBe(readings)

    const stale = await send(
      shop, `/api/jobs/${job.id}/plan`, { ...wish, reason: 'Again', basedOn: 1 }, 'owner',
    ).expect(412)
    expect(stale.body).toMatchObject({ code: 'edit-stale', field: 'basedOn' })
  }, 60_000)

  it('a rule that the owner edits leaves open jobs as they are until they are planned again', async () => {
    const job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
    const { body: { rules } } = await shop.as('machinist').get('/api/rules').expect(200)
    const rule = rules.find((one: { fit: string }) => one.fit === 'piston-in-bore')
    expect(rule).toMatchObject({ level: 'starter', revision: 0 })
    const before = await definitionHashes(job.id)
    const parameters = Object.fromEntries(rule.parameters
      .filter((one: { unit: string }) => one.unit === 'per-diameter')
      .map((one: { name: string; value: number }) => [one.name, one.value + 100]))
    const edit = { parameters, source: 'the shop’s own log of seized pistons', basedOn: 0 }
    const revised = await send(shop, '/api/rules/piston-in-bore', edit, 'owner').expect(201)
    expect(revised.body).toMatchObject({ level: 'shop', revision: 1, source: edit.source })
    expect(
      (await send(shop, '/api/rules/piston-in-bore', edit, 'owner').expect(412)).body.code,
    ).toBe('edit-stale')
    expect(
      (await send(shop, '/api/rules/no-such-fit', edit, 'owner').expect(422)).body.code,
    ).toBe('rule-unknown')
    expect(await definitionHashes(job.id)).toEqual(before)

    const { body: plan } = await shop.as('owner').get(`/api/jobs/${job.number}/plan`).expect(200)
    const { duty, parts, options, sheets } = plan
    await send(
      shop, `/api/jobs/${job.id}/plan`, { duty, parts, options, sheets, reason: 'New numbers', basedOn: 1 },
      'owner',
    ).expect(201)
    const after = await definitionHashes(job.id)
    expect(Object.keys(after).filter((key) => before[key] !== after[key])).toEqual(['hone-bores'])
    const { body: fresh } = await shop.as('owner').get(`/api/jobs/${job.number}/plan`).expect(200)
    const limit = (of: typeof plan) => of.requirements.find(
      (one: { key: string }) => one.key === 'piston-in-bore/1',
    )
    expect(limit(fresh).limits.low).toBeGreaterThan(limit(plan).limits.low)
    expect(limit(fresh).why).toMatchObject({ level: 'shop', revision: 1 })
  }, 60_000)
})
