import {
  decideFinding, listFindings, raiseFinding, readOperation, readPlan, revisePlan, takeReadings, type findingDecisions,
} from '@tenths/contract'
import { featureKey, type FeatureDefinition, parseLength } from '@tenths/domain'
import { measuresPairs } from './aim.ts'
import type { Caller } from './client.ts'
import { gaugeOf } from './gauges.ts'
import { crewOf, habitOf, measureFeature, signStep, startClock, testAll, tickAll, typeLots, type Hands, type Surprise } from './hands.ts'
import { keepHours } from './hours.ts'
import { idOf } from './identity.ts'
import type { PersonKey } from './people.ts'
import { situationOf, type OperationAnswer, type PlanAnswer, type Situation } from './situation.ts'
import { typeValue } from './typing.ts'

type Surprises = Readonly<Record<string, Surprise>>
type Decision = (typeof findingDecisions)[number]

/** One job on the shop floor, and what its script can have the people of the demo do with it. */
export interface Floor {
  readonly jobId: string
  as(person: PersonKey): Caller
  readPlan(): Promise<PlanAnswer>
  readStep(key: string): Promise<OperationAnswer>
  /** The owner plans the job anew with these makers' sheets. */
  planWithSheets(reason: string, sheets: PlanAnswer['sheets']): Promise<void>
  /** Works and signs every step of the route, up to and with this one, that is not signed yet. */
  workThrough(lastKey: string): Promise<void>
  /** Measures and ticks one step, and leaves it unsigned; surprises by `place#feature`. */
  workOn(key: string, surprises?: Surprises): Promise<void>
  /** Measures one step up to, and not with, this feature, and ticks nothing. */
  beginOn(key: string, before: string, surprises?: Surprises): Promise<void>
  /** Measures one feature in a new pass. */
  measureAgain(key: string, feature: string): Promise<void>
  /** Corrects the reading of one point by an amount, with a reason, in the same pass. */
  correct(key: string, feature: string, point: string, by: string, reason: string): Promise<void>
  /** Signs a step that is not signed, or is open again. */
  sign(key: string): Promise<void>
  /** Leaves the clock running on a step: somebody is at it right now. */
  startClock(key: string): Promise<void>
  /** Asks the owner about a requirement that is outside or not proven; answers the finding's id. */
  ask(key: string, requirement: string, title: string, sentence: string): Promise<string>
  decide(findingId: string, decision: Decision, reason: string): Promise<void>
  /** The owner's decision on a finding of the plan, by words of its title. */
  decideOnPlan(title: string, decision: Decision, reason: string): Promise<void>
}

export function openFloor(hands: Hands): Floor {
  const { jobId, jobNumber, callers } = hands
  const params = { id: jobId }
  let plan: PlanAnswer | null = null
  const currentPlan = async () => (plan ??= await callers.odile.call(readPlan, { params: { number: jobNumber } }))
  const readStep = (key: string) => callers.odile.call(readOperation, { params: { number: jobNumber, key } })
  const situationAt = async (key: string) => situationOf(await currentPlan(), await readStep(key), hands.unit)

  async function measureAll(situation: Situation, surprises: Surprises, before?: string): Promise<void> {
    const { operation } = situation.step
    const seesEach = measuresPairs(situation)
    for (const reference of operation.features) {
      if (featureKey(reference) === before) return
      const definition = definitionOf(situation.step, featureKey(reference))
      // A load that was cut short has measured some of it already.
      if (situation.latest(definition)?.operationKey === operation.key) continue
      // What was seen at the beginning is enough to aim by, unless the step measures both halves of a pair.
      const now = seesEach ? await situationAt(operation.key) : situation
      await measureFeature(hands, now, definition, surprises[featureKey(reference)])
    }
  }

  async function work(situation: Situation, surprises: Surprises = {}): Promise<void> {
    await measureAll(situation, surprises)
    await tickAll(hands, situation.step.operation)
    await testAll(hands, situation.step)
    await typeLots(hands, situation.step)
  }

  const floor: Floor = {
    jobId,
    as: (person) => callers[person],
    readPlan: currentPlan,
    readStep,
    async planWithSheets(reason, sheets) {
      const { revision, duty, parts, options, sheets: known } = await currentPlan()
      if (known.length === sheets.length) return
      const body = { duty, parts, options, sheets, reason, basedOn: revision }
      await callers.odile.call(revisePlan, { params, body })
      plan = null
    },
    async workThrough(lastKey) {
      const { operations } = await currentPlan()
      const last = operations.findIndex(({ key }) => key === lastKey)
      if (last < 0) throw new Error(`Job ${jobNumber} has no step ${lastKey}.`)
      for (const { key } of operations.slice(0, last + 1)) {
        const situation = await situationAt(key)
        if (situation.step.state === 'signed') continue
        await work(situation)
        await keepHours(hands, situation.step)
        await signStep(hands, situation.step)
      }
    },
    workOn: async (key, surprises) => work(await situationAt(key), surprises),
    beginOn: async (key, before, surprises = {}) => measureAll(await situationAt(key), surprises, before),
    async measureAgain(key, feature) {
      const situation = await situationAt(key)
      const definition = definitionOf(situation.step, feature)
      const passesHere = situation.step.passes.filter((pass) => pass.operationKey === key
        && pass.partId === situation.partAt(definition.place) && pass.feature === definition.feature)
      if (passesHere.length === 1) await measureFeature(hands, situation, definition)
    },
    async correct(key, feature, point, by, reason) {
      const step = await readStep(key)
      await correctReading(hands, step, definitionOf(step, feature), point, parseLength(by, 'inch'), reason)
    },
    async sign(key) {
      const step = await readStep(key)
      if (step.state !== 'signed') await signStep(hands, step)
    },
    async startClock(key) {
      await startClock(hands, (await readStep(key)).operation)
    },
    async ask(key, requirement, title, sentence) {
      const id = idOf('finding', jobId, key, requirement)
      const [person] = crewOf((await readStep(key)).operation)
      const body = { id, operationKey: key, requirementKey: requirement, title, sentence, stops: true }
      await callers[person].call(raiseFinding, { params, body })
      return id
    },
    async decide(findingId, decision, reason) {
      const body = { decision, reason, low: null, high: null }
      await callers.odile.call(decideFinding, { params: { id: findingId }, body })
    },
    async decideOnPlan(title, decision, reason) {
      const lists = await Promise.all((['open', 'decided'] as const)
        .map((state) => callers.odile.call(listFindings, { query: { state } })))
      const finding = lists.flatMap(({ findings }) => findings)
        .find((known) => known.jobId === jobId && known.title.includes(title))
      if (finding === undefined) throw new Error(`Job ${jobNumber} has no finding “${title}”.`)
      if (finding.state === 'open') await floor.decide(finding.id, decision, reason)
    },
  }
  return floor
}

function definitionOf({ features, operation }: OperationAnswer, key: string): FeatureDefinition {
  const definition = features.find((feature) => featureKey(feature) === key)
  if (definition === undefined) throw new Error(`${operation.key} does not measure ${key}.`)
  return definition
}

/** The old reading stays visible; the new one names it and says why. */
async function correctReading(
  hands: Hands, { operation, placed, passes }: OperationAnswer, definition: FeatureDefinition, point: string, by: number,
  reason: string,
): Promise<void> {
  const partId = placed.find(({ place }) => place === definition.place)?.partId
  const pass = passes.filter((one) => one.partId === partId && one.feature === definition.feature).at(-1)
  const wrong = pass?.readings.findLast((reading) => reading.point === point)
  if (pass === undefined || wrong === undefined) throw new Error(`${featureKey(definition)} has no reading at ${point}.`)
  if (wrong.supersedes !== null) return
  const [person] = crewOf(operation)
  await hands.callers[person].call(takeReadings, {
    params: { id: hands.jobId },
    body: {
      operationKey: operation.key,
      pass: {
        id: pass.id, partId: pass.partId, feature: pass.feature, number: pass.number, gaugeId: pass.gaugeId,
        state: pass.state, setOn: pass.setOn,
      },
      readings: [{
        id: idOf('reading', wrong.id, 'corrected'),
        point,
        ...typeValue(definition.quantity, wrong.value + by, gaugeOf(pass.gaugeMark), habitOf(person)),
        supersedes: wrong.id,
        reason,
        deviceAt: null,
        confirmed: true,
      }],
    },
  })
}
