import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { shortBlock } from '@tenths/domain'
import { complete, measure, read, send, sign, startFloor, workUpTo, type Floor } from '../../support/floor.ts'
import { openJob, type OpenedJob } from '../../support/shop.ts'
import { copyOf, runVerify, type Copy } from '../../support/tampering.ts'

let shop: Floor
let job: OpenedJob
let signOff: { id: string; sealNumber: number }
let title: string

/** A job with a plan, signatures, a concession and a re-opening in its chain; then the shop closes. */
beforeAll(async () => {
  shop = await startFloor()
  job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  await workUpTo(shop, job, 'hone-bores')
  const page = await read(shop, job, 'hone-bores')
  title = page.operation.title
  const high = page.requirements.find(({ key }) => key === 'piston-in-bore/1')?.limits.high ?? 0
  await complete(shop, job, 'hone-bores', () => 85_945_000 + high + 1_000)
  const finding = {
    id: randomUUID(), operationKey: 'hone-bores', requirementKey: 'piston-in-bore/1', title: 'Wide',
    sentence: 'Look.', stops: true,
  }
  await send(shop, `/api/jobs/${job.id}/findings`, finding).expect(201)
  await send(shop, `/api/findings/${finding.id}/decision`, {
    decision: 'concession', reason: 'The owner lets it pass', low: high, high: high + 10_000,
  }, 'owner').expect(201)
  await sign(shop, job, 'hone-bores')
  await measure(shop, job, {
    operationKey: 'hone-bores', feature: shortBlock.bore(1), gaugeId: shop.exact.length, number: 3,
    values: 85_945_000 + high + 2_000,
  })
  signOff = await sign(shop, job, 'hone-bores')
  await shop.app.close()
  await shop.pool.end()
}, 120_000)
afterAll(() => shop.database.drop())

async function tampered(change: (copy: Copy) => Promise<void>): Promise<{ code: number; output: string }> {
  const copy = await copyOf(shop.database)
  try {
    await change(copy)
    return await runVerify(copy.url)
  } finally {
    await copy.drop()
  }
}

const newest = 'job_id = $1 AND number = (SELECT max(number) FROM seal WHERE job_id = $1)'

const changes: Record<string, (copy: Copy) => Promise<void>> = {
  'altering a reading': async (copy) => {
    const { rowCount } = await copy.tamper(
      `UPDATE reading SET value = value + 2540
        WHERE id = (SELECT reading_id FROM sign_off_reading WHERE sign_off_id = $1 ORDER BY reading_id LIMIT 1)`, [signOff.id],
    )
    expect(rowCount).toBe(1)
  },
  'altering a limit': async (copy) => {
    const { rows: [row] } = await copy.tamper('SELECT plan FROM plan_revision WHERE job_id = $1', [job.id])
    const text = String(row.plan)
    const plan = JSON.parse(text)
    const limits = plan.requirements.find(({ key }: { key: string }) => key === 'piston-in-bore/1').limits
    const altered = text.replaceAll(`"high":${limits.high}`, `"high":${limits.high + 25_400}`)
    expect(altered).not.toBe(text)
    await copy.tamper('UPDATE plan_revision SET plan = $2 WHERE job_id = $1', [job.id, altered])
  },
  'altering a signer': async (copy) => {
    await copy.tamper(
      'UPDATE signature SET person_id = $2 WHERE sign_off_id = $1', [signOff.id, shop.people.owner.id],
    )
  },
  'deleting the newest sign-off': async (copy) => {
    await copy.tamper('DELETE FROM signature WHERE sign_off_id = $1', [signOff.id])
    await copy.tamper('DELETE FROM sign_off_reading WHERE sign_off_id = $1', [signOff.id])
    await copy.tamper('DELETE FROM sign_off WHERE id = $1', [signOff.id])
    const { rowCount } = await copy.tamper(`DELETE FROM seal WHERE ${newest}`, [job.id])
    expect(rowCount).toBe(1)
  },
  'deleting the newest sign-off and shortening the chain to fit': async (copy) => {
    await copy.tamper('DELETE FROM signature WHERE sign_off_id = $1', [signOff.id])
    await copy.tamper('DELETE FROM sign_off_reading WHERE sign_off_id = $1', [signOff.id])
    await copy.tamper('DELETE FROM sign_off WHERE id = $1', [signOff.id])
    await copy.tamper(`DELETE FROM seal WHERE ${newest}`, [job.id])
    await copy.tamper(
      `UPDATE job SET seal_count = seal_count - 1, seal_head = (SELECT hash FROM seal WHERE ${newest}) WHERE id = $1`, [job.id],
    )
  },
  'swapping two': async (copy) => {
    const other = signOff.sealNumber - 1
    const swap = (from: number, to: number) =>
      copy.tamper('UPDATE seal SET number = $3 WHERE job_id = $1 AND number = $2', [job.id, from, to])
    await swap(other, 1_000_000)
    await swap(signOff.sealNumber, other)
    await swap(1_000_000, signOff.sealNumber)
  },
  'removing a blank from a payload': async (copy) => {
    const { rowCount } = await copy.tamper(
      `UPDATE seal SET payload = regexp_replace(payload, ' ', '') WHERE job_id = $1 AND number = $2`, [
        job.id, signOff.sealNumber,
      ],
    )
    expect(rowCount).toBe(1)
  },
}

describe('verify', () => {
  it('accepts every seal of a shop that nobody tampered with', async () => {
    const { code, output } = await tampered(async () => undefined)
    expect(output).toContain(`Job ${job.number}: sound, ${signOff.sealNumber} seals`)
    expect(code).toBe(0)
  }, 60_000)

  describe('With superuser rights: altering a reading, a limit, a signer, deleting the newest sign-off, swapping two, or removing a blank from a payload each make `verify` exit 1 with job and step', () => {
    it.each(Object.keys(changes))('%s', async (name) => {
      const { code, output } = await tampered(changes[name]!)
      expect(output).toContain(`Job ${job.number}, ${title}`)
      expect(output).not.toContain(': sound')
      expect(code).toBe(1)
    }, 60_000)
  })
})
