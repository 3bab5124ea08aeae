import type { FeatureDefinition, FeatureReference } from '../features/feature.ts'
import { featureOf, type FeatureIndex } from '../features/feature-index.ts'
import { isDifference } from './feature-value.ts'
import type { RemedyRule, Requirement } from './requirement.ts'

/** Which way a value goes. */
export type Direction = 'up' | 'down'

/**
 * What taking metal off a feature does to a requirement's value, and by how much for one base unit taken off.
 */
export interface CutEffect {
  readonly direction: Direction
  readonly perBaseUnit: number
}

const cuts: readonly RemedyRule['action'][] = ['hone', 'grind', 'file', 'face', 'deck', 'lighten']

/**
 * Which way a cut moves the value: metal off a hole or gap makes it larger, off anything else smaller. A cut
 * on a feature that the value is not made of (a rod's face for a side clearance measured with feelers) does
 * what its rule was set for. Null when the rule does not cut.
 */
export function cutMoves(
  { measurand }: Requirement, { action, feature }: RemedyRule, needed: Direction, features: FeatureIndex,
): CutEffect | null {
  if (!cuts.includes(action)) return null
  const asRuled: CutEffect = { direction: needed, perBaseUnit: 1 }
  if (feature === null) return asRuled
  const grows = growsWhenCut(featureOf(features, feature))
  switch (measurand.kind) {
    case 'feature':
      if (!isSame(measurand.feature, feature)) return asRuled
      // a cut makes the form of a hole as well as of a shaft better, never worse
      return { direction: grows && !isDifference(measurand.reducer) ? 'up' : 'down', perBaseUnit: 1 }
    case 'clearance':
      if (!isSame(measurand.hole, feature) && !isSame(measurand.shaft, feature)) return asRuled
      // hole larger or shaft smaller: either way there is more room
      return { direction: 'up', perBaseUnit: 1 }
    case 'apart':
      if (!isSame(measurand.feature, feature)) return asRuled
      return { direction: grows === (measurand.from === 'least') ? 'up' : 'down', perBaseUnit: 1 }
    case 'sum': {
      const term = measurand.terms.find((candidate) => isSame(candidate.feature, feature))
      if (term === undefined || term.factor === 0) return asRuled
      return { direction: grows === term.factor > 0 ? 'up' : 'down', perBaseUnit: Math.abs(term.factor) }
    }
  }
}

function growsWhenCut({ shape }: FeatureDefinition): boolean {
  return shape === 'hole' || shape === 'gap'
}

function isSame(one: FeatureReference, other: FeatureReference): boolean {
  return one.place === other.place && one.feature === other.feature
}
