import type { FeatureDefinition } from '../features/feature.ts'
import { indexFeatures, type FeatureIndex } from '../features/feature-index.ts'
import type { Measurements } from '../measuring/pass.ts'
import { adviceFor } from './advice.ts'
import { clearanceValue } from './clearance-value.ts'
import { probabilityOfConformity } from './conformity.ts'
import { featureValue } from './feature-value.ts'
import { remedyFor } from './remedy.ts'
import type { Measurand, Requirement } from './requirement.ts'
import { defaultJudgeSettings, type JudgeSettings } from './settings.ts'
import { sumValue } from './sum-value.ts'
import type { Value, Unmeasured } from './value.ts'
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
    advice: adviceFor(requirement, value, zone, guardBand, settings),
  }
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
