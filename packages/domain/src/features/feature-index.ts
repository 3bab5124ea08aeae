import { DomainError } from '../errors.ts'
import { featureKey, type FeatureDefinition, type FeatureReference } from './feature.ts'

/**
 * A plan's features by place, then by name: a look-up joins no text, because judging looks up several features for each
 * line.
 */
export type FeatureIndex = ReadonlyMap<string, ReadonlyMap<string, FeatureDefinition>>

export function indexFeatures(features: readonly FeatureDefinition[]): FeatureIndex {
  const index = new Map<string, Map<string, FeatureDefinition>>()
  for (const feature of features) {
    let ofPlace = index.get(feature.place)
    if (ofPlace === undefined) {
      ofPlace = new Map()
      index.set(feature.place, ofPlace)
    }
    ofPlace.set(feature.feature, feature)
  }
  return index
}

/** @throws DomainError `feature-unknown` when the plan defines no such feature */
export function featureOf(index: FeatureIndex, reference: FeatureReference): FeatureDefinition {
  const feature = index.get(reference.place)?.get(reference.feature)
  if (feature === undefined) {
    throw new DomainError('feature-unknown', `The plan has no feature ${featureKey(reference)}.`)
  }
  return feature
}

/** The text under which one point of a feature is listed: `place#feature@point`. */
export function pointKey(reference: FeatureReference, point: string): string {
  return `${featureKey(reference)}@${point}`
}
