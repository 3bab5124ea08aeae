import type { FeatureReference, Requirement, Verdict } from '@tenths/domain'
import { isSameFeature } from '../sheet/operation-sheet.ts'

/** Every feature that a requirement is about. One that stands apart from its set is about that one alone: a heavy piston is no fault of the others. */
export function featuresOf({ measurand }: Requirement): readonly FeatureReference[] {
  switch (measurand.kind) {
    case 'feature': return [measurand.feature]
    case 'clearance': return [measurand.hole, measurand.shaft]
    case 'sum': return measurand.terms.map(({ feature }) => feature)
    case 'apart': return [measurand.feature]
  }
}

/** Whether a value of this feature has a say in the requirement. */
export function dependsOn(requirement: Requirement, feature: FeatureReference): boolean {
  return featuresOf(requirement).some((one) => isSameFeature(one, feature))
}

/** The features that a clearance pairs with this one: what a gauge may be set on. */
export function matesOf(requirements: readonly Requirement[], feature: FeatureReference): readonly FeatureReference[] {
  return requirements.flatMap(({ measurand }) => {
    if (measurand.kind !== 'clearance') return []
    if (isSameFeature(measurand.hole, feature)) return [measurand.shaft]
    return isSameFeature(measurand.shaft, feature) ? [measurand.hole] : []
  })
}

const gravest: readonly Verdict['kind'][] = ['outside', 'not-proven', 'not-measured', 'within']

/** The gravest of several verdicts; null when there is none to choose from. */
export function gravestKind(kinds: readonly Verdict['kind'][]): Verdict['kind'] | null {
  return gravest.find((kind) => kinds.includes(kind)) ?? null
}

/** The order in which verdicts want attention: what is outside first, what is within last. */
export function byGravity(one: Verdict['kind'], other: Verdict['kind']): number {
  return gravest.indexOf(one) - gravest.indexOf(other)
}
