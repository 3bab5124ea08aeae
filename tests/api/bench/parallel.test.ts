import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { verifyJob } from '../../../apps/api/src/verify/verify-job.ts'
import { read, send, signBody, startFloor, statesOf, workUpTo, type Floor } from '../../support/floor.ts'
import { openJob, type OpenedJob } from '../../support/shop.ts'

/** Ten steps before trial assembly, each with a measuring that no later step repeated. */
const steps = [
  'measure-block', 'measure-rods', 'receive-parts', 'hone-bores', 'polish-crank', 'hone-small-ends',
  'fit-pins', 'ring-gaps',
  'main-bearings', 'rod-bearings',
] as const

let shop: Floor
let job: OpenedJob
const signers: { id: string; pin: string }[] = []

beforeAll(async () => {
  shop = await startFloor()
  job = await openJob(shop, { modelId: shop.models['Test single'], duty: 'street' })
  await workUpTo(shop, job, 'trial-assembly')
  // one person's PIN is tried five times at once at most: fifty signatures take ten people
  for (let index = 0; index < 10; index += 1) {
    const person = { id: randomUUID(), pin: `73019${index}` }
    await send(shop, '/api/people', {
      ...person, name: `Signer ${index}`, signInName: `signer${index}`,
      password: `password of signer ${index}`, roles: ['machinist'],
    }, 'owner').expect(201)
    signers.push(person)
  }
}, 120_000)
afterAll(() => shop.stop())

/** A correction of one reading of a step, by a thousandth of a millimetre back and forth. */
async function correctionOf(step: string, round: number) {
  const page = await read(shop, job, step)
  const pass = page.passes.filter(({ operationKey, partId, feature, number }) => operationKey === step
    && page.passes.every(
      (other) => other.partId !== partId || other.feature !== feature || other.number <= number,
    )).at(-1)!
  const superseded = new Set(pass.readings.map(({ supersedes }) => supersedes))
  const reading = pass.readings.find(({ id }) => !superseded.has(id))!
  const value = reading.value + (round % 2 === 0 ? 100 : -100)
  return {
    operationKey: step,
    pass: {
      id: pass.id, partId: pass.partId, feature: pass.feature, number: pass.number, gaugeId: pass.gaugeId,
      state: pass.state,
      setOn: pass.setOn,
    },
    readings: [{
      id: randomUUID(), point: reading.point, value, typed: `${value / 1_000_000} mm`, supersedes: reading.id,
      reason: 'typed wrongly',
      deviceAt: null, confirmed: true,
    }],
  }
}

it('Fifty parallel sign-offs of ten operations of one job, with corrections of their readings in between, give one unbroken chain, and no sealed payload holds a superseded reading without a re-opening after it', async () => {
  const statuses = new Map<number, number>()
  for (let round = 0; round < 3; round += 1) {
    const corrections = await Promise.all(steps.map((step) => correctionOf(step, round)))
    const pages = await Promise.all(steps.map((step) => read(shop, job, step)))
    const signatures = pages.flatMap((page, step) => Array.from({ length: 5 }, (_, turn) => {
      const { id: personId, pin } = signers[(step + turn) % signers.length]!
      return { ...signBody(page), signatures: [{ personId, pin }] }
    }))
    const requests = signatures.flatMap((body, index) => [
      send(shop, `/api/jobs/${job.id}/sign-offs`, body),
      ...(index % 5 === 2 ? [
        send(shop, `/api/jobs/${job.id}/readings`, corrections[Math.floor(index / 5)]!),
      ] : []),
    ])
    for (const { status, body } of await Promise.all(requests)) {
      statuses.set(status, (statuses.get(status) ?? 0) + 1)
      if (status !== 201) {
        expect(['operation-signed', 'operation-not-reachable'], JSON.stringify(body)).toContain(body.code)
      }
    }
  }
  expect(statuses.get(201)).toBeGreaterThan(30)
  const { rows: [counts] } = await shop.pool.query<{ signed: number; opened: number }>(
    `SELECT (SELECT count(*) FROM sign_off WHERE job_id = $1) AS signed, (SELECT count(*) FROM re_opening WHERE job_id = $1) AS opened`,
    [job.id],
  )
  expect(counts?.opened).toBeGreaterThan(5)
  expect(counts?.signed).toBeGreaterThan(Object.keys(await statesOf(shop, job)).indexOf('trial-assembly'))

  const client = await shop.pool.connect()
  try {
    expect((await verifyJob(client, job.id)).faults).toEqual([])
  } finally {
    client.release()
  }
}, 180_000)
