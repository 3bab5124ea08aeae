import type { FeatureReference } from '../features/feature.ts'
import type { ReadingKind } from './reading-context.ts'

/** A feature's name without its number or bank: what it has in common with its like. */
export function familyOf({ place, feature }: FeatureReference): string {
  const part = place.split('/')[0] ?? place
  return `${part}#${feature.replace(/-(\d+|viewer-left|viewer-right|only)$/, '')}`
}

const kinds: Readonly<Record<string, ReadingKind>> = {
  'block#bore': 'bore',
  'block#main-housing': 'housing', 'rod#big-end': 'housing', 'main-bearing#bore': 'housing', 'rod-bearing#bore': 'housing',
  'crankshaft#main-journal': 'journal', 'crankshaft#rod-journal': 'journal',
  'piston-pin#diameter': 'pin', 'rod#small-end': 'bushing', 'piston#pin-bore': 'bushing', 'piston#skirt': 'piston',
  'top-ring#end-gap': 'ring-gap', 'second-ring#end-gap': 'ring-gap',
  'top-ring#side-clearance': 'ring-side-clearance', 'second-ring#side-clearance': 'ring-side-clearance',
  'oil-ring#side-clearance': 'ring-side-clearance',
  'assembly#end-play': 'end-play', 'assembly#final-end-play': 'end-play',
  'assembly#rod-side-clearance': 'rod-side-clearance', 'assembly#deck-clearance': 'deck-clearance',
  'rod-bolts#stretch': 'bolt-stretch',
}

/**
 * What kind of reading a feature gives: each has its own scatter and usual range. A gauge set on the mating part reads
 * a clearance: of a bearing the oil clearance.
 */
export function readingKindOf(feature: FeatureReference, isSetOnMate: boolean): ReadingKind {
  const family = familyOf(feature)
  if (isSetOnMate) return family.endsWith('bearing#bore') ? 'oil-clearance' : 'other'
  return kinds[family] ?? 'other'
}
