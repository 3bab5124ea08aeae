import type { FeatureDefinition, PartKind, Place } from '../../features/feature.ts'
import { partOfPlace } from '../../features/feature.ts'
import type { RouteContext } from './route-context.ts'

/**
 * Places of these kinds of part, kind by kind and then as a hand meets them: what goes in there has a lot or a
 * serial, by which it is found again when its maker calls it back.
 */
export function lotPlaces(features: RouteContext['features'], kinds: readonly PartKind[]): readonly Place[] {
  const places = Object.values<readonly FeatureDefinition[]>({ ...features }).flat().map(({ place }) => place)
  return kinds.flatMap((kind) => [...new Set(places.filter((place) => partOfPlace(place).kind === kind))])
}
