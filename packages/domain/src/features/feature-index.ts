import { DomainError } from '../errors.ts'
import { featureKey, type FeatureDefinition, type FeatureReference } from './feature.ts'

/** A plan's features by place and name, so that a thousand look-ups cost no more than one each. */
export type FeatureIndex = ReadonlyMap<string, FeatureDefinition>

export function indexFeatures(features: readonly FeatureDefinition[]): FeatureIndex {
  return new Map(features.map((feature) => [featureKey(feature), feature]))
}

/** @throws DomainError `feature-unknown` when the plan defines no such feature */
export function featureOf(index: FeatureIndex, reference: FeatureReference): FeatureDefinition {
  const feature = index.get(featureKey(reference))
  if (feature === undefined) {
    throw new DomainError('feature-unknown', `The plan has no feature ${featureKey(reference)}.`)
  }
  return feature
}

/** The text under which one point of a feature is listed: `place#feature@point`. */
export function pointKey(reference: FeatureReference, point: string): string {
  return `${featureKey(reference)}@${point}`
}
