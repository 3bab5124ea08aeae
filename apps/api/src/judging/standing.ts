import {
  changedNeighbour, deriveFeature, indexFeatures, featureOf, judge, measurementsOf, stages,
  type FeatureDefinition, type FeatureIndex, type Measurements, type Observation, type Operation,
  type Place, type Verdict,
} from '@tenths/domain'
import { concessionFor } from './concessions.ts'
import type { Evidence, KnownSignOff, LiveConcession, OpenFinding } from './evidence.ts'
import { allBefore, unsignedBefore } from './route-order.ts'
import { lotlessOf, testsOf, unseenOf, type Tests } from './tested.ts'

export const operationStates = ['waiting', 'ready', 'under-way', 'signed', 're-opened'] as const
export type OperationState = (typeof operationStates)[number]

/** Where one operation stands: what is measured, seen, signed, and what it still waits for. */
export interface Standing {
  readonly operation: Operation
  readonly state: OperationState
  /** One for each of its requirements, in its order. */
  readonly verdicts: readonly Verdict[]
  /** Concessions that cover a verdict, by requirement key. */
  readonly conceded: ReadonlyMap<string, LiveConcession>
  /** Features to be measured here that are not: no full pass of this step, in the state that they ask for. */
  readonly unmeasured: readonly FeatureDefinition[]
  /** Things not ticked as seen or not applicable, or without what they ask for. */
  readonly unseen: readonly Observation[]
  /** Areas without a result, and areas whose result stands against the part. */
  readonly tests: Tests
  /** Places whose part has no lot or serial yet. */
  readonly lotless: readonly Place[]
  /** Open findings that stop a signature here. */
  readonly stoppedBy: readonly OpenFinding[]
  readonly openFindings: number
  /** Operations before this one, however far, that are not signed; empty when it can be worked on. */
  readonly waitsFor: readonly Operation[]
  readonly signOff: KnownSignOff | null
}

/** Where every operation of a job stands, in the route's order: a pure function of the evidence. */
export function standingsOf(evidence: Evidence): Standing[] {
  const { plan, settings } = evidence
  const index = indexFeatures(plan.features)
  const measurements = measurementsOf(evidence.placed, evidence.passes)
  const requirements = new Map(plan.requirements.map((requirement) => [requirement.key, requirement]))
  const liveSignOffs = new Map(
    evidence.signOffs.filter(({ live }) => live).map((signOff) => [signOff.operationKey, signOff]),
  )
  const beforeEach = allBefore(plan.operations)
  return plan.operations.map((operation) => {
    const verdicts = operation.requirements.flatMap((key) => {
      const requirement = requirements.get(key)
      return requirement === undefined ? [] : [judge(requirement, measurements, index, settings)]
    })
    const conceded = new Map(verdicts.flatMap((verdict) => {
      const concession = concessionFor(verdict, evidence.concessions)
      return concession === null ? [] : [[verdict.requirement, concession] as const]
    }))
    const signOff = liveSignOffs.get(operation.key) ?? null
    const before = beforeEach.get(operation.key) ?? new Set()
    const waitsFor = unsignedBefore(plan.operations, before, (key) => liveSignOffs.has(key))
    return {
      operation,
      state: stateOf(operation, evidence, signOff !== null, waitsFor.length === 0),
      verdicts,
      conceded,
      unmeasured: unmeasuredOf(operation, evidence, index, measurements, before),
      unseen: unseenOf(operation, evidence),
      tests: testsOf(operation, evidence),
      lotless: lotlessOf(operation, evidence),
      stoppedBy: evidence.openFindings.filter((finding) => stops(finding, operation)),
      openFindings: evidence.openFindings.filter(({ operationKey }) => operationKey === operation.key).length,
      waitsFor,
      signOff,
    }
  })
}

function stateOf(
  operation: Operation, evidence: Evidence, signed: boolean, reachable: boolean,
): OperationState {
  if (signed) return 'signed'
  if (evidence.signOffs.some(({ operationKey }) => operationKey === operation.key)) return 're-opened'
  if (!reachable) return 'waiting'
  const begun = evidence.worked.includes(operation.key)
    || evidence.passes.some(({ operationKey }) => operationKey === operation.key)
    || evidence.observations.some(({ operationKey }) => operationKey === operation.key)
    || evidence.inspections.some(({ operationKey }) => operationKey === operation.key)
  return begun ? 'under-way' : 'ready'
}

/**
 * Features whose latest pass is not full, is void because its gauge had drifted, was taken in another state than
 * they ask for or beside what is no longer there, or belongs to an earlier step: what a bore measured as it came in says nothing of what honing made of it. Also a feature
 * without limits is to be recorded.
 */
function unmeasuredOf(
  operation: Operation, evidence: Evidence, index: FeatureIndex, measurements: Measurements,
  before: ReadonlySet<string>,
): FeatureDefinition[] {
  const partAt = new Map(evidence.placed.map(({ place, partId }) => [place, partId]))
  return operation.features.map((reference) => featureOf(index, reference)).filter((definition) => {
    const pass = evidence.passes.find(({ partId, feature }) =>
      partId === partAt.get(definition.place) && feature === definition.feature)
    return pass === undefined
      || pass.isVoid === true
      || before.has(pass.operationKey)
      || !deriveFeature(definition, pass).complete
      || definition.state.some((state) => !pass.state.includes(state))
      || changedNeighbour(definition, pass, measurements) !== null
  })
}

/**
 * A finding stops the operation that it was raised on. One that belongs to the whole job (parts that will not
 * go together) stops everything from planning on: no metal is cut while it is open.
 */
function stops({ stops: isStopping, operationKey }: OpenFinding, operation: Operation): boolean {
  if (!isStopping) return false
  if (operationKey !== null) return operationKey === operation.key
  return stages.indexOf(operation.stage) >= stages.indexOf('planning')
}
