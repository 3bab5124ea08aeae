import { shortBlock, type FeatureReference } from '@tenths/domain'
import { complete, measure, read, resultOf, seeAll, send, startFloor, workUpTo, type Floor, type PassWanted, type TestJob } from '../../support/floor.ts'
import { mark } from '../../support/pending.ts'
import { openJob, type ShopOptions } from '../../support/shop.ts'

const { bigEnd, smallEnd, pinDiameter } = shortBlock
const tenth = 2_540

/** A shop whose jobs stand at every kind of moment that a page of the bench can show. */
export interface BenchShop {
  readonly floor: Floor
  /** Some small ends are measured, one outside and one not proven; a step before is open again. */
  readonly atWork: TestJob
  /** At a step that two people sign, and seen. */
  readonly forTwo: TestJob
  /** At a step with readings that only wants its PIN. */
  readonly ready: TestJob
  /** At a step with tests for cracks: one area has an indication, one none, the rest are to be tested. */
  readonly cracked: TestJob
  /** At a step that asks for a soak, nothing done. */
  readonly soaking: TestJob
  /** At the step where rings are clocked, with lots to type. */
  readonly clocked: TestJob
  /** At the balancer, everything weighed: one piston is too heavy. */
  readonly weighed: TestJob
}

export async function startBenchShop(options: ShopOptions): Promise<BenchShop> {
  const floor = await startFloor(options)
  const job = () => openJob(floor, { duty: 'street' })
  const small = () => openJob(floor, { modelId: floor.models['Test single'], duty: 'street' })
  const shop = {
    floor, atWork: await job(), forTwo: await job(), ready: await job(),
    cracked: await small(), soaking: await small(), clocked: await small(),
    weighed: await openJob(floor, { duty: 'street', work: 'balancing' }),
  }

  await workUpTo(floor, shop.atWork, 'hone-small-ends')
  // Common practice, no source: without boost a bushing wants 0.0003 to 0.0008 in on its pin.
  for (const [cylinder, tenths] of [[1, 12], [2, 5.5], [3, 8]] as const) {
    await measureAgain(floor, shop.atWork, 'hone-small-ends', smallEnd(cylinder), {
      gaugeId: floor.gauges.P1, setOn: pinDiameter(cylinder), values: tenths * tenth,
    })
  }
  // A step that was signed, and is not any more.
  await measureAgain(floor, shop.atWork, 'measure-rods', bigEnd(1), { gaugeId: floor.exact.length })

  await workUpTo(floor, shop.forTwo, 'bore')
  await seeAll(floor, shop.forTwo, await read(floor, shop.forTwo, 'bore'))

  await workUpTo(floor, shop.ready, 'fit-pins')
  await complete(floor, shop.ready, 'fit-pins')

  await testSome(floor, shop.cracked)
  await workUpTo(floor, shop.soaking, 'measure-block')
  await workUpTo(floor, shop.clocked, 'install-pistons')
  await workUpTo(floor, shop.weighed, 'balance')
  await complete(floor, shop.weighed, 'balance', ({ place, feature }, wanted) => (
    place === 'piston/3' && feature === 'weight' ? wanted + 2_400 : wanted
  ))
  await markTwo(floor, await small(), await small())
  return shop
}

async function testSome(floor: Floor, job: TestJob): Promise<void> {
  await workUpTo(floor, job, 'crack-test')
  const [first, second] = (await read(floor, job, 'crack-test')).operation.inspections ?? []
  if (first === undefined || second === undefined) throw new Error('There is nothing to test for cracks.')
  await send(floor, `/api/jobs/${job.id}/inspections`, {
    operationKey: 'crack-test',
    results: [resultOf(first), resultOf(second, { result: 'indication', note: 'Line of a quarter inch at the bolt hole' })],
  }).expect(201)
}

/** The second machinist marked two steps as signed without a network; one was measured again before it was confirmed. */
async function markTwo(floor: Floor, good: TestJob, stale: TestJob): Promise<void> {
  await workUpTo(floor, good, 'measure-block')
  await complete(floor, good, 'measure-block')
  await mark(floor, good, 'measure-block', ['second'])

  await workUpTo(floor, stale, 'hone-bores')
  await complete(floor, stale, 'hone-bores')
  const id = await mark(floor, stale, 'hone-bores', ['second'])
  await measureAgain(floor, stale, 'hone-bores', shortBlock.bore(1), { gaugeId: floor.exact.length })
  await send(floor, '/api/pending-sign-offs/confirmations', { ids: [id], pin: floor.people.second.pin }, 'second').expect(200)
}

/** A further pass of a feature; where no value is given, the value of the pass before. */
async function measureAgain(
  floor: Floor, job: TestJob, operationKey: string, feature: FeatureReference,
  wanted: Pick<PassWanted, 'gaugeId' | 'setOn'> & Partial<Pick<PassWanted, 'values'>>,
): Promise<void> {
  const { placed, passes } = await read(floor, job, operationKey)
  const partId = placed.find(({ place }) => place === feature.place)?.partId
  const before = passes.filter((pass) => pass.partId === partId && pass.feature === feature.feature)
  const values = before.at(-1)?.readings[0]?.value ?? 0
  await measure(floor, job, { operationKey, feature, number: before.length + 1, values, ...wanted })
}
