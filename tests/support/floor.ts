import { randomUUID } from 'node:crypto'
import type { z } from 'zod'
import type { readOperation } from '@tenths/contract'
import type { FeatureReference, Plan } from '@tenths/domain'
import { wantedSizes } from './wanted-sizes.ts'
import { key, startShop, type ShopOptions, type TestShop } from './shop.ts'
import { testPeople, type Who } from './stock.ts'

export type OperationPage = z.infer<(typeof readOperation)['answer']>

const exactQuantities = ['length', 'torque', 'angle', 'roughness', 'mass', 'unbalance', 'force'] as const
type ExactQuantity = (typeof exactQuantities)[number]

/**
 * A test shop with gauges that read everything exactly, for the steps that lead up to what a test is about.
 */
export interface Floor extends TestShop {
  readonly exact: Readonly<Record<ExactQuantity, string>>
}

export async function startFloor(options: ShopOptions = {}): Promise<Floor> {
  const shop = await startShop(options)
  const exact = Object.fromEntries(exactQuantities.map((quantity) => [quantity, randomUUID()])) as Record<ExactQuantity, string>
  for (const quantity of exactQuantities) {
    await addGauge(
      shop, { id: exact[quantity], mark: `X-${quantity}`, quantity, resolution: 1, standardUncertainty: 1 },
    )
  }
  return { ...shop, exact }
}

/** Adds a gauge as the owner does. */
export async function addGauge(shop: TestShop, fields: Record<string, unknown>): Promise<string> {
  const body = {
    id: randomUUID(), mark: 'G', name: 'Gauge of a test', kind: 'micrometer', quantity: 'length',
    resolution: 2_540, analogue: false,
    clockwiseIsSmaller: false, standardUncertainty: 1_270, calibratedUntil: '2099-12-31', retired: false,
    ...fields,
  }
  await send(shop, '/api/gauges', body, 'owner').expect(201)
  return String(body.id)
}

export interface TestJob {
  readonly id: string
  readonly number: number
}

/** One operation as the bench reads it. */
export async function read(
  shop: TestShop, job: TestJob, operationKey: string, who: Who = 'machinist',
): Promise<OperationPage> {
  const { body } = await shop.as(who).get(`/api/jobs/${job.number}/operations/${operationKey}`).expect(200)
  return body as OperationPage
}

/** A command with a fresh idempotency key. */
export function send(shop: TestShop, path: string, body: object, who: Who = 'machinist') {
  return shop.as(who).post(path).set(key()).send(body)
}

/** Text that names its unit, so that the value is what was typed. */
function typed(value: number, quantity: string = 'length'): string {
  switch (quantity) {
    case 'torque': return `${value / 1_000} N·m`
    case 'angle': return `${value / 1_000}°`
    case 'roughness': return `${value / 1_000} µm`
    case 'mass': return `${value / 1_000} g`
    case 'unbalance': return `${value / 1_000} g·mm`
    case 'force': return `${value / 1_000} N`
    default: return `${value / 1_000_000} mm`
  }
}

export interface PassWanted {
  readonly operationKey: string
  readonly feature: FeatureReference
  readonly gaugeId: string
  readonly number?: number
  /** Value of each point, in nanometres; a single one for all points. */
  readonly values: number | Readonly<Record<string, number>>
  readonly setOn?: FeatureReference
  readonly state?: readonly string[]
  readonly passId?: string
}

/**
 * The body of one pass, as the bench sends it: full where one value is given, else the points that are named.
 */
export function passBody(page: OperationPage, wanted: PassWanted) {
  const definition = page.features.find(
    ({ place, feature }) => place === wanted.feature.place && feature === wanted.feature.feature,
  )
  if (definition === undefined) {
    throw new Error(
      `${page.operation.key} does not measure ${wanted.feature.feature}`,
    )
  }
  const partAt = (place: string) => {
    const part = page.placed.find((placed) => placed.place === place)
    if (part === undefined) throw new Error(`nothing is in ${place}`)
    return part.partId
  }
  const { values } = wanted
  const points = typeof values === 'number'
    ? definition.points.map(({ key: point }) => [point, values] as const)
    : Object.entries(values)
  return {
    operationKey: wanted.operationKey,
    pass: {
      id: wanted.passId ?? randomUUID(), partId: partAt(definition.place), feature: definition.feature,
      number: wanted.number ?? 1,
      gaugeId: wanted.gaugeId, state: wanted.state ?? definition.state,
      setOn: wanted.setOn === undefined ? null : {
        partId: partAt(wanted.setOn.place), feature: wanted.setOn.feature,
      },
    },
    readings: points.map(([point, value]) => ({
      id: randomUUID(), point, value, typed: typed(
        value, definition.quantity,
      ), supersedes: null, reason: null, deviceAt: null,
      confirmed: true,
    })),
  }
}

/** Measures one feature and expects it to be taken. */
export async function measure(shop: TestShop, job: TestJob, wanted: PassWanted, who: Who = 'machinist') {
  const body = passBody(await read(shop, job, wanted.operationKey), wanted)
  const { body: answer } = await send(shop, `/api/jobs/${job.id}/readings`, body, who).expect(201)
  return { body, answer }
}

/** A tick with whatever the thing asks for: words, or a time long enough ago by the shop's clock. */
export function tickOf(shop: TestShop, { key: item, asks }: OperationPage['operation']['observations'][number]) {
  return {
    id: randomUUID(), item, outcome: 'seen' as const, note: asks?.kind === 'words' ? 'as asked' : '',
    ...(asks?.kind === 'since'
      ? { since: new Date(shop.app.shop.now().getTime() - asks.minutes * 60_000).toISOString() }
      : {}),
  }
}

/** All that an operation asks for beside its readings: ticks, results of tests, lots of what goes in. */
export async function seeAll(shop: TestShop, job: TestJob, page: OperationPage): Promise<void> {
  await tickAll(shop, job, page)
  await testAll(shop, job, page)
  await typeLots(shop, job, page)
}

/** Ticks everything to be seen at an operation. */
export async function tickAll(shop: TestShop, job: TestJob, page: OperationPage): Promise<void> {
  const observations = page.operation.observations.map((thing) => tickOf(shop, thing))
  if (observations.length === 0) return
  await send(
    shop, `/api/jobs/${job.id}/observations`, { operationKey: page.operation.key, observations },
  ).expect(201)
}

/** The result of one area, by its usual method and by the machinist. */
export function resultOf(area: NonNullable<OperationPage['operation']['inspections']>[number], change: object = {}) {
  const [method] = area.methods
  return {
    id: randomUUID(), item: area.key, method, pressure: method === 'pressure' ? 300_000 : null,
    result: 'no-indication', note: '', inspectorId: testPeople.machinist.id, ...change,
  }
}

/** Tests every area of an operation, and finds nothing. */
export async function testAll(shop: TestShop, job: TestJob, page: OperationPage): Promise<void> {
  const results = (page.operation.inspections ?? []).map((area) => resultOf(area))
  if (results.length === 0) return
  await send(shop, `/api/jobs/${job.id}/inspections`, { operationKey: page.operation.key, results }).expect(201)
}

/** Types a lot for every part that has none yet. */
export async function typeLots(shop: TestShop, job: TestJob, page: OperationPage): Promise<void> {
  const lots = page.lots.filter(({ lot }) => lot === '').map(({ partId, place }) => ({
    id: randomUUID(), partId, lot: `Lot of ${place}`,
  }))
  if (lots.length === 0) return
  await send(shop, `/api/jobs/${job.id}/lots`, { reason: '', lots }).expect(201)
}

export function signBody(
  page: Pick<OperationPage, 'operation' | 'definitionHash'>, signers?: readonly Who[],
) {
  const who = signers ?? (page.operation.signatures === 2 ? ['machinist', 'second'] as const : ['machinist'] as const)
  return {
    id: randomUUID(), operationKey: page.operation.key, definitionHash: page.definitionHash,
    signatures: who.map((one) => ({ personId: testPeople[one].id, pin: testPeople[one].pin })),
  }
}

/** Signs and expects it to be sealed. */
export async function sign(shop: TestShop, job: TestJob, operationKey: string) {
  const page = await read(shop, job, operationKey)
  const { body } = await send(shop, `/api/jobs/${job.id}/sign-offs`, signBody(page)).expect(201)
  return body as { id: string; sealNumber: number; hash: string }
}

/** Sizes other than the wanted ones: the feature and the wanted size in, the size that is measured out. */
export type Adjust = (feature: FeatureReference, wanted: number) => number

/**
 * Measures everything at an operation so that it comes out within its limits, unless `adjust` says otherwise,
 * and ticks what is to be seen.
 */
export async function complete(
  shop: Floor, job: TestJob, operationKey: string, adjust: Adjust = (_feature, wanted) => wanted,
): Promise<void> {
  const page = await read(shop, job, operationKey)
  const { body: plan } = await shop.as('machinist').get(`/api/jobs/${job.number}/plan`).expect(200)
  const sizes = wantedSizes(plan as Plan)
  for (const reference of page.operation.features) {
    const partId = page.placed.find(({ place }) => place === reference.place)?.partId
    const quantity = page.features.find(
      (one) => one.place === reference.place && one.feature === reference.feature,
    )?.quantity
    const passes = page.passes.filter((pass) => pass.partId === partId && pass.feature === reference.feature)
    await send(shop, `/api/jobs/${job.id}/readings`, passBody(page, {
      operationKey, feature: reference, gaugeId: shop.exact[exactQuantities.find((one) => one === quantity) ?? 'length'],
      number: passes.length + 1, values: adjust(reference, sizes(reference)),
    })).expect(201)
  }
  await seeAll(shop, job, page)
}

/**
 * Completes and signs every operation in the order of the route, up to but not including the one that is
 * named.
 */
export async function workUpTo(shop: Floor, job: TestJob, operationKey: string | null): Promise<void> {
  const { body } = await shop.as('machinist').get(`/api/jobs/${job.number}`).expect(200)
  for (const step of (body as { route: { key: string; state: string }[] }).route) {
    if (step.key === operationKey) return
    if (step.state === 'signed') continue
    await complete(shop, job, step.key)
    await sign(shop, job, step.key)
  }
}

/** State of each operation by its key. */
export async function statesOf(shop: TestShop, job: TestJob): Promise<Record<string, string>> {
  const { body } = await shop.as('machinist').get(`/api/jobs/${job.number}`).expect(200)
  return Object.fromEntries(
    (body as { route: { key: string; state: string }[] }).route.map((step) => [step.key, step.state]),
  )
}

/** How many readings the job has in all. */
export async function countReadings(shop: TestShop, job: TestJob): Promise<number> {
  const { rows } = await shop.pool.query<{ count: number }>(
    'SELECT count(*) FROM reading JOIN pass ON pass.id = reading.pass_id WHERE pass.job_id = $1', [job.id],
  )
  return rows[0]?.count ?? 0
}

/** The verdict on one requirement, as the page of an operation shows it. */
export function verdictOn(page: Pick<OperationPage, 'verdicts'>, requirement: string) {
  const verdict = page.verdicts.find((one) => one.requirement === requirement)
  if (verdict === undefined) throw new Error(`no verdict on ${requirement}`)
  return verdict
}
