import type { ReaderUnit } from '../exact/length-unit.ts'
import { featureKey, type FeatureDefinition, type FeatureReference } from '../features/feature.ts'
import type { Measurand, Requirement } from '../judging/requirement.ts'
import { materials } from '../temperature/material.ts'
import { blocksFirst, type Doubt } from './doubt.ts'
import { checkMagnitude } from './magnitude.ts'
import { starterPlausibilityNumbers, type PlausibilityNumbers } from './numbers.ts'
import { latest, likeFeatures, ownPass, passBefore, passesOf, passHere } from './passes-around.ts'
import type { ReadingContext } from './reading-context.ts'
import { doubtsOfReading } from './reading-doubt.ts'
import { readingKindOf } from './reading-kind-of.ts'
import { doubtsOfSecondPerson } from './second-person.ts'
import { setContextsOf } from './set-context.ts'
import { doubtsOfSet } from './set-doubt.ts'
import { doubtsOfSoak, type SoakContext } from './other-doubts.ts'
import { countingOf, type Surroundings, type TakenValue } from './taken-value.ts'
import { doubtOfForceUnit, doubtsOfWeight } from './weight-doubt.ts'

/**
 * Every doubt about a value that is typed at a step, those that block first: the value by itself, beside its neighbours,
 * its mate and the pass before, the set that it completes, what somebody else read there, and how warm its part was. The
 * browser asks before it stores, the service before it takes, both of the same facts.
 * @param unit in which the sentences name lengths
 */
export function doubtsOfTaken(
  taken: TakenValue, around: Surroundings, unit: ReaderUnit, numbers: PlausibilityNumbers = starterPlausibilityNumbers,
): Doubt[] {
  if (taken.definition.quantity !== 'length') return doubtsOfOther(taken, around, numbers)
  const reading = readingContextOf(taken, around)
  const own = reading.nominal === null ? doubtOfExpected(taken, around, numbers) : []
  const doubts = own.length > 0 ? own : [
    ...doubtsOfReading(reading, unit, numbers),
    ...setContextsOf(taken, around, numbers).flatMap((set) => doubtsOfSet(set, numbers)),
    ...doubtsOfSecondPerson(taken, around, numbers),
    ...soakOf(taken, around).flatMap((soak) => doubtsOfSoak(soak, numbers)),
  ]
  return blocksFirst(doubts)
}

/** Weights are held against their like, loads of springs and the rest against what their requirement expects. */
function doubtsOfOther(taken: TakenValue, around: Surroundings, numbers: PlausibilityNumbers): Doubt[] {
  const { definition, value } = taken
  if (definition.quantity === 'mass') return doubtsOfWeight(definition, value, neighboursOf(taken, around), numbers)
  const inOtherUnit = definition.quantity === 'force'
    ? doubtOfForceUnit(value, expectedAt(around.requirements, definition), numbers)
    : null
  return inOtherUnit === null ? doubtOfExpected(taken, around, numbers) : [inOtherUnit]
}

/** What is known around a typed length, in the terms of the rules. */
export function readingContextOf(taken: TakenValue, around: Surroundings): ReadingContext {
  const { definition, value, isSetOnMate, state, settingSize } = taken
  return {
    kind: readingKindOf(definition, isSetOnMate),
    stage: around.operation.stage === 'intake' || around.operation.stage === 'inspection' ? 'intake' : 'finished',
    value,
    nominal: isSetOnMate ? null : definition.nominal,
    neighbours: neighboursOf(taken, around),
    settingSize,
    dialRevolution: null,
    previous: isSetOnMate ? null : previousAt(taken, around),
    isCoated: state.includes('coated'),
    mate: isSetOnMate ? clearanceItself(definition, around) : mateOf(definition, around),
    bore: around.bore,
  }
}

/**
 * A clearance or a torque has no nominal size; what it is usually near is a target or a limit, and it can be far outside
 * and still be true: it is asked about, never blocked.
 */
function doubtOfExpected(
  { definition, value, isSetOnMate }: TakenValue, { requirements }: Surroundings, { magnitude }: PlausibilityNumbers,
): Doubt[] {
  if (!isSetOnMate && definition.nominal !== null) {
    const found = checkMagnitude(value, definition.nominal, magnitude)
    return found === null ? [] : [found]
  }
  const found = checkMagnitude(value, expectedAt(requirements, definition), magnitude)
  return found === null
    ? []
    : [{ ...found, outcome: 'ask', sentence: found.sentence.replace('nominal size', 'usual value') }]
}

/** What a value of this feature is usually near, where no nominal size says it: a target, else a limit; null for neither. */
export function expectedAt(requirements: readonly Requirement[], feature: FeatureReference): number | null {
  for (const { measurand, limits } of requirements) {
    const isOfSize = measurand.kind === 'clearance'
      || (measurand.kind === 'feature' && !['range', 'out-of-round', 'taper'].includes(measurand.reducer))
    const expected = limits.target ?? limits.high ?? limits.low
    if (isOfSize && expected !== null && namesFeature(measurand, feature)) return expected
  }
  return null
}

function namesFeature(measurand: Measurand, feature: FeatureReference): boolean {
  const named = measurand.kind === 'clearance' ? [measurand.hole, measurand.shaft]
    : measurand.kind === 'sum' ? measurand.terms.map((term) => term.feature) : [measurand.feature]
  return named.some((one) => featureKey(one) === featureKey(feature))
}

/** The other values of the same feature, else those of its like at this step. */
function neighboursOf(taken: TakenValue, around: Surroundings): readonly number[] {
  const own = ownPass(taken, around)
  const beside = own === null ? [] : countingOf(own).filter(({ point }) => point !== taken.point).map(({ value }) => value)
  return beside.length > 0 ? beside : likeFeatures(taken.definition, around)
    .filter((like) => featureKey(like) !== featureKey(taken.definition))
    .flatMap((like) => valuesHere(like, taken, around))
}

function valuesHere(feature: FeatureDefinition, taken: TakenValue, around: Surroundings): readonly number[] {
  const pass = passHere(feature, taken, around)
  return pass === null ? [] : countingOf(pass).map(({ value }) => value)
}

function previousAt({ definition, point, passNumber }: TakenValue, around: Surroundings): number | null {
  const before = passBefore(definition, passNumber, around)
  return before === null ? null : countingOf(before).find((reading) => reading.point === point)?.value ?? null
}

/**
 * The part that must run in or on this one, judged at this very step: a bore as received may well be smaller than the
 * piston that it is yet to be bored for.
 */
function mateOf(definition: FeatureDefinition, around: Surroundings): ReadingContext['mate'] {
  for (const { measurand, limits } of around.requirements) {
    if (measurand.kind !== 'clearance' || limits.low === null || limits.low <= 0) continue
    const isHole = featureKey(measurand.hole) === featureKey(definition)
    if (!isHole && featureKey(measurand.shaft) !== featureKey(definition)) continue
    const pass = latest(passesOf(isHole ? measurand.shaft : measurand.hole, around).filter(({ isVoid }) => !isVoid))
    if (pass === null || pass.setOn !== null || pass.readings.length === 0) continue
    const values = countingOf(pass).map(({ value }) => value)
    return isHole
      ? { shape: 'shaft', value: Math.max(...values) }
      : { shape: 'hole', value: Math.min(...values) }
  }
  return null
}

/** A gauge set on the mate reads the clearance: nothing or less of it cannot run. */
function clearanceItself(definition: FeatureDefinition, { requirements }: Surroundings): ReadingContext['mate'] {
  const runs = requirements.some(({ measurand, limits }) =>
    measurand.kind === 'clearance' && limits.low !== null && limits.low > 0 && namesFeature(measurand, definition))
  return runs ? { shape: 'shaft', value: 0 } : null
}

/** Aluminium grows most of what engines are made of: the bound where the material is not one. */
const unknownExpansion = materials.aluminium.expansion

function soakOf(
  { definition, value, warmth, opensPass, isSetOnMate }: TakenValue, { requirements }: Surroundings,
): readonly SoakContext[] {
  if (warmth === null || !opensPass || isSetOnMate) return []
  const tolerances = requirements.flatMap(({ measurand, limits: { low, high } }) =>
    (low !== null && high !== null && namesFeature(measurand, definition) ? [high - low] : []))
  return [{
    part: {
      temperature: warmth.part,
      expansion: warmth.material === null ? unknownExpansion : materials[warmth.material].expansion,
    },
    gauge: { temperature: warmth.gauge, expansion: materials['gauge-steel'].expansion },
    size: value,
    tolerance: Math.min(...tolerances),
    isCorrected: warmth.material !== null,
  }]
}
