import {
  featureKey, featureOf, indexFeatures,
  type FeatureDefinition, type FeatureReference, type Measurand, type Operation, type Plan, type Requirement,
} from '@tenths/domain'

/** The features that a measurand is computed from. */
export function featuresOfMeasurand(measurand: Measurand): FeatureReference[] {
  switch (measurand.kind) {
    case 'feature': return [measurand.feature]
    case 'clearance': return [measurand.hole, measurand.shaft]
    case 'sum': return measurand.terms.map(({ feature }) => feature)
    case 'apart': return [measurand.feature, ...measurand.set]
  }
}

/** The requirements that an operation is signed for, in its order. */
export function requirementsOf(plan: Plan, operation: Operation): Requirement[] {
  const byKey = new Map(plan.requirements.map((requirement) => [requirement.key, requirement]))
  return operation.requirements.flatMap((key) => byKey.get(key) ?? [])
}

/**
 * What may be measured at an operation: its own features first, then those of the mates that its requirements
 * name.
 */
export function featuresAt(plan: Plan, operation: Operation): FeatureDefinition[] {
  const index = indexFeatures(plan.features)
  const references = [
    ...operation.features,
    ...requirementsOf(plan, operation).flatMap(({ measurand }) => featuresOfMeasurand(measurand)),
  ]
  return [
    ...new Map(references.map((reference) => [featureKey(reference), featureOf(index, reference)])).values()
  ]
}

/** These features, and those of other parts beside which they are read. */
export function withNeighbours(plan: Plan, features: readonly FeatureDefinition[]): FeatureDefinition[] {
  const index = indexFeatures(plan.features)
  const neighbours = features.flatMap(({ beside = [] }) => beside).flatMap(({ place, feature }) =>
    feature === null ? [] : index.get(place)?.get(feature) ?? [])
  return [...new Map([...features, ...neighbours].map((one) => [featureKey(one), one])).values()]
}

/** Every place that must be known to judge these features: their own, and those beside which they are read. */
export function placesSeen(features: readonly FeatureDefinition[]): ReadonlySet<string> {
  return new Set(features.flatMap(({ place, beside = [] }) => [place, ...beside.map((one) => one.place)]))
}
