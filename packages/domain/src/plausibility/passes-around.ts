import { featureKey, type FeatureDefinition, type FeatureReference } from '../features/feature.ts'
import { familyOf } from './reading-kind-of.ts'
import type { KnownPass, Surroundings, TakenValue } from './taken-value.ts'

/** Features of one family and size measured at the step, in its order. */
export function likeFeatures(definition: FeatureDefinition, { operation, features }: Surroundings): readonly FeatureDefinition[] {
  const known = new Map(features.map((feature) => [featureKey(feature), feature]))
  return operation.features
    .flatMap((reference) => known.get(featureKey(reference)) ?? [])
    .filter((one) => familyOf(one) === familyOf(definition) && one.nominal === definition.nominal)
}

/** The latest pass of a feature at this step; of the feature in hand the one that the value goes into. */
export function passHere(feature: FeatureDefinition, taken: TakenValue, around: Surroundings): KnownPass | null {
  if (featureKey(feature) === featureKey(taken.definition)) return ownPass(taken, around)
  const passes = passesOf(feature, around).filter(({ operationKey, isVoid, setOn }) =>
    operationKey === around.operation.key && !isVoid && (setOn !== null) === taken.isSetOnMate)
  return latest(passes)
}

/** The pass that the value goes into; null before its first value. */
export function ownPass({ definition, passNumber }: TakenValue, around: Surroundings): KnownPass | null {
  return passesOf(definition, around).find(({ number }) => number === passNumber) ?? null
}

/** The pass before the one that a value goes into, of sizes and not void. */
export function passBefore(feature: FeatureReference, below: number, around: Surroundings): KnownPass | null {
  return latest(passesOf(feature, around).filter(({ number, setOn, isVoid }) => number < below && setOn === null && !isVoid))
}

/** Every pass of the part that sits in a feature’s place now. */
export function passesOf({ place, feature }: FeatureReference, { placed, passes }: Surroundings): readonly KnownPass[] {
  const partId = placed.find((one) => one.place === place)?.partId
  return passes.filter((pass) => pass.partId === partId && pass.feature === feature)
}

/** The latest of them by number. */
export function latest(passes: readonly KnownPass[]): KnownPass | null {
  return passes.reduce<KnownPass | null>((newest, pass) => (newest === null || pass.number > newest.number ? pass : newest), null)
}
