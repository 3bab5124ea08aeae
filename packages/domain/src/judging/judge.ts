import type { FeatureDefinition } from '../features/feature.ts'
import { indexFeatures, type FeatureIndex } from '../features/feature-index.ts'
import type { Measurements } from '../measuring/pass.ts'
import { adviceFor } from './advice.ts'
import { apartValue } from './apart-value.ts'
import { clearanceValue } from './clearance-value.ts'
import { correctionWords } from './correction-words.ts'
import { probabilityOfConformity } from './conformity.ts'
import { featureValue } from './feature-value.ts'
import { zoneOfFeelers } from './feeler-zone.ts'
import { remedyFor } from './remedy.ts'
import type { Measurand, Requirement } from './requirement.ts'
import { defaultJudgeSettings, type JudgeSettings } from './settings.ts'
import { sumValue } from './sum-value.ts'
import type { MeasuredValue, Value, Unmeasured } from './value.ts'
import type { Verdict } from './verdict.ts'
import { guardBandOf, zoneOf } from './zones.ts'

/**
 * The verdict on one requirement from what is measured now: within, not proven, outside or not measured, with
 * the uncertainty, the probability of conformity and, when it is outside, the remedy.
 * @param features the plan's features; index them once (indexFeatures) where many requirements are judged
 * @throws DomainError when the plan refers to a feature it does not define, or asks of a feature what its
 *   points cannot tell
 */
export function judge(
  requirement: Requirement,
  measurements: Measurements,
  features: FeatureIndex | readonly FeatureDefinition[],
  settings: JudgeSettings = defaultJudgeSettings,
): Verdict {
  const index = 'get' in features ? features : indexFeatures(features)
  const value = valueOf(requirement.measurand, measurements, index)
  if (value.kind === 'not-measured') return notMeasured(requirement, value)

  if (value.blades !== undefined) return judgeFeelers(requirement, value, value.blades, index, settings)

  const { least, greatest, standardUncertainty, readings } = value
  const guardBand = guardBandOf(requirement.guard, standardUncertainty)
  const zone = zoneOf(least, greatest, requirement.limits, guardBand)
  const coverageFactor = requirement.guard.kind === 'guarded'
    ? requirement.guard.coverageFactor
    : settings.coverageFactor
  return {
    requirement: requirement.key,
    kind: zone.kind,
    least,
    greatest,
    uncertainty: coverageFactor * standardUncertainty,
    guardBand,
    probability: probabilityOfConformity(least, greatest, requirement.limits, standardUncertainty),
    side: zone.side,
    missing: [],
    readings,
    remedy: zone.kind === 'outside' && zone.side !== null
      ? remedyFor(requirement, { least, greatest, guardBand, side: zone.side }, index, settings.unit)
      : null,
    advice: joined(adviceFor(requirement, value, zone, guardBand, settings), correctionWords(value, settings.unit)),
  }
}

/**
 * Feelers: no uncertainty is added to the blades, so there is no guard band and no probability, only what is proven. A
 * gap too small is told by the blade that stops: filing goes no further than is surely needed.
 */
function judgeFeelers(
  requirement: Requirement, value: MeasuredValue, { low, high }: NonNullable<MeasuredValue['blades']>,
  index: FeatureIndex, settings: JudgeSettings,
): Verdict {
  const zone = zoneOfFeelers(low, requirement.limits, high)
  return {
    requirement: requirement.key,
    kind: zone.kind,
    least: value.least,
    greatest: value.greatest,
    uncertainty: null,
    guardBand: 0,
    probability: null,
    side: zone.side,
    missing: [],
    readings: value.readings,
    remedy: zone.kind === 'outside' && zone.side !== null
      ? remedyFor(
        requirement, { least: low.stops ?? low.enters, greatest: high.enters, guardBand: 0, side: zone.side }, index,
        settings.unit,
      )
      : null,
    advice: zone.kind === 'not-proven'
      ? 'The limit lies between the two blades: try the blade equal to it.'
      : adviceFor(requirement, value, zone, 0, settings),
  }
}

function joined(...sentences: readonly (string | null)[]): string | null {
  const said = sentences.filter((sentence) => sentence !== null)
  return said.length === 0 ? null : said.join(' ')
}

/** Judges all requirements of a plan, in its order. */
export function judgeAll(
  plan: { readonly requirements: readonly Requirement[]; readonly features: readonly FeatureDefinition[] },
  measurements: Measurements,
  settings: JudgeSettings = defaultJudgeSettings,
): Verdict[] {
  const index = indexFeatures(plan.features)
  return plan.requirements.map((requirement) => judge(requirement, measurements, index, settings))
}

/**
 * The measured value of what a requirement compares, or what is missing for it: what pages show before a
 * verdict.
 */
export function valueOf(measurand: Measurand, measurements: Measurements, features: FeatureIndex): Value {
  switch (measurand.kind) {
    case 'feature': return featureValue(measurand, measurements, features)
    case 'clearance': return clearanceValue(measurand, measurements, features)
    case 'sum': return sumValue(measurand, measurements, features)
    case 'apart': return apartValue(measurand, measurements, features)
  }
}

function notMeasured(requirement: Requirement, { missing, reasons }: Unmeasured): Verdict {
  return {
    requirement: requirement.key,
    kind: 'not-measured',
    least: null,
    greatest: null,
    uncertainty: null,
    guardBand: 0,
    probability: null,
    side: null,
    missing,
    readings: [],
    remedy: null,
    advice: reasons.length === 0 ? null : reasons.join(' '),
  }
}
