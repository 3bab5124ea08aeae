import { observe, recordInspections, setLots, signOff, startWork, takeReadings } from '@tenths/contract'
import { featureKey, type FeatureDefinition, type FeatureReference } from '@tenths/domain'
import { staffing } from './benches.ts'
import { Refused, type Caller, type Given } from './client.ts'
import type { DemoGauge } from './gauges.ts'
import { idOf } from './identity.ts'
import { lotOf, wordsFor } from './written-down.ts'
import { measure, type Measuring } from './measure.ts'
import { people, type PersonKey } from './people.ts'
import type { OperationAnswer, Situation } from './situation.ts'
import { typeValue } from './typing.ts'

/** The job in hand and the people who work on it. */
export interface Hands {
  readonly jobId: string
  readonly jobKey: string
  readonly jobNumber: number
  readonly unit: Situation['unit']
  readonly callers: Readonly<Record<PersonKey, Caller>>
  readonly personIds: Readonly<Record<PersonKey, string>>
  /** Since when each person's time is spoken for, in minutes ago: one works at one thing, so that no stretch lies over another. */
  readonly spokenFor: Map<PersonKey, number>
}

/** A measuring that does not go by the aim: the scripted surprises of the demo. */
export type Surprise = (definition: FeatureDefinition, situation: Situation, expected: Measuring) => SurpriseReadings
export interface SurpriseReadings {
  readonly gauge: DemoGauge
  readonly onMate: boolean
  readonly values: readonly number[]
}

type Operation = OperationAnswer['operation']

/** Whoever built an engine does not inspect it: the owner stands beside. */
const inspectors: readonly [PersonKey, PersonKey] = ['sunniva', 'odile']

/** Who does a step, and who signs beside. */
export function crewOf({ key, bench }: Operation): readonly [PersonKey, PersonKey] {
  return key === 'final-inspection' || key === 'parts-inspection' ? inspectors : staffing[bench]
}

/** Measures one feature in its next pass, every point of it, and sends the readings together. */
export async function measureFeature(
  hands: Hands, situation: Situation, definition: FeatureDefinition, surprise?: Surprise,
): Promise<void> {
  const { operation } = situation.step
  const [person] = crewOf(operation)
  const number = (situation.latest(definition)?.number ?? 0) + 1
  const name = [featureKey(definition), number] as const
  const expected = measure(definition, situation, [hands.jobKey, ...name])
  const taken = surprise?.(definition, situation, expected) ?? asExpected(expected)
  const mate = taken.onMate ? mateOf(definition, situation) : null
  await takeAll(hands, person, {
    operationKey: operation.key,
    pass: {
      id: idOf('pass', hands.jobId, ...name),
      partId: situation.partAt(definition.place),
      feature: definition.feature,
      number,
      gaugeId: idOf('gauge', taken.gauge.mark),
      state: [...definition.state],
      setOn: mate && { partId: situation.partAt(mate.place), feature: mate.feature },
    },
    readings: definition.points.map((point, index) => ({
      id: idOf('reading', hands.jobId, ...name, point.key),
      point: point.key,
      ...typeValue(definition.quantity, taken.values[index] ?? NaN, taken.gauge, habitOf(person)),
      supersedes: null,
      reason: null,
      deviceAt: null,
      confirmed: false,
    })),
  })
}

type ReadingsBody = NonNullable<Given<typeof takeReadings>['body']>

/** A value that looks unlikely is read off once more and stood by: it was read, not typed wrong. */
async function takeAll(hands: Hands, person: PersonKey, body: ReadingsBody): Promise<void> {
  try {
    await hands.callers[person].call(takeReadings, { params: { id: hands.jobId }, body })
  } catch (error) {
    const index = error instanceof Refused && error.code === 'value-implausible'
      ? /^readings\.(\d+)\.typed$/.exec(error.field ?? '')?.[1] : undefined
    const doubted = body.readings[Number(index)]
    if (doubted === undefined || doubted.confirmed) throw error
    const stoodBy = body.readings.map((reading) => (reading === doubted ? { ...reading, confirmed: true } : reading))
    await takeAll(hands, person, { ...body, readings: stoodBy })
  }
}

const asExpected = ({ aim, values }: Measuring): SurpriseReadings => ({
  gauge: aim.gauge, onMate: aim.setOn !== null, values: values.map(({ value }) => value),
})

/** Bryn types .0182 where the others type 0.0182. */
export const habitOf = (person: PersonKey) => ({ leadingNought: person !== 'bryn' })

/** The other half of the pair that this feature belongs to, as this step judges it. */
function mateOf(definition: FeatureDefinition, { plan, step }: Situation): FeatureReference | null {
  for (const { key, measurand } of plan.requirements) {
    if (measurand.kind !== 'clearance' || !step.operation.requirements.includes(key)) continue
    if (featureKey(measurand.hole) === featureKey(definition)) return measurand.shaft
    if (featureKey(measurand.shaft) === featureKey(definition)) return measurand.hole
  }
  return null
}

/** Ticks everything that the step wants seen. */
export async function tickAll({ callers, jobId }: Hands, operation: Operation): Promise<void> {
  if (operation.observations.length === 0) return
  const [person] = crewOf(operation)
  await callers[person].call(observe, {
    params: { id: jobId },
    body: {
      operationKey: operation.key,
      observations: operation.observations.map(({ key, asks }) => ({
        id: idOf('observation', jobId, operation.key, key),
        item: key,
        outcome: 'seen' as const,
        note: asks?.kind === 'words' ? wordsFor(key) : '',
        ...(asks?.kind === 'since' ? { since: new Date(Date.now() - (asks.minutes + 15) * 60_000).toISOString() } : {}),
      })),
    },
  })
}

/** Tests every area of the step; the demo's parts are sound. */
export async function testAll({ callers, personIds, jobId }: Hands, { operation, inspections }: OperationAnswer): Promise<void> {
  const known = new Set(inspections.map(({ item }) => item))
  const areas = (operation.inspections ?? []).filter(({ key }) => !known.has(key))
  if (areas.length === 0) return
  const [person] = crewOf(operation)
  await callers[person].call(recordInspections, {
    params: { id: jobId },
    body: {
      operationKey: operation.key,
      results: areas.map(({ key, methods: [method = 'dye-penetrant'] }) => ({
        id: idOf('inspection', jobId, operation.key, key), item: key, method,
        pressure: method === 'pressure' ? 280_000 : null, result: 'no-indication' as const,
        note: method === 'pressure' ? 'Held for ten minutes in warm water' : '', inspectorId: personIds[person],
      })),
    },
  })
}

/** Types the lots of what goes in here: one for each kind of part, as it came out of one box. */
export async function typeLots({ callers, jobId, jobKey }: Hands, { operation, lots }: OperationAnswer): Promise<void> {
  const missing = lots.filter(({ lot }) => lot === '')
  if (missing.length === 0) return
  const [person] = crewOf(operation)
  await callers[person].call(setLots, {
    params: { id: jobId },
    body: {
      reason: '',
      lots: missing.map(({ partId, place }) => ({ id: idOf('lot', jobId, partId), partId, lot: lotOf(jobKey, place) })),
    },
  })
}

/** Starts the clock of whoever does the step. */
export async function startClock({ callers, jobId }: Hands, operation: Operation): Promise<void> {
  const [person] = crewOf(operation)
  await callers[person].call(startWork, {
    params: { id: jobId }, body: { id: idOf('work', jobId, operation.key), operationKey: operation.key, action: 'start' },
  })
}

/** Signs a step with the PIN of whoever did it, and a witness's where it asks for two. */
export async function signStep({ callers, personIds, jobId }: Hands, step: OperationAnswer): Promise<void> {
  const { operation, definitionHash, signOffs } = step
  const [person, witness] = crewOf(operation)
  const signers = operation.signatures === 2 ? [person, witness] : [person]
  await callers[person].call(signOff, {
    params: { id: jobId },
    body: {
      id: idOf('sign-off', jobId, operation.key, signOffs.length),
      operationKey: operation.key,
      definitionHash,
      signatures: signers.map((signer) => ({ personId: personIds[signer], pin: people[signer].pin })),
    },
  })
}
