import { featureKey, type FeatureReference, type Limits, type Plan } from '@tenths/domain'

/**
 * A size for every feature at which each requirement of a plan comes out in the middle of its limits, in base
 * units.
 */
export function wantedSizes(plan: Plan): (feature: FeatureReference) => number {
  const definitions = new Map(plan.features.map((feature) => [featureKey(feature), feature]))
  const known = new Map<string, number>()
  const sizeOf = (reference: FeatureReference): number => {
    const name = featureKey(reference)
    const before = known.get(name)
    if (before !== undefined) return before
    const size = wanted(reference)
    known.set(name, size)
    return size
  }
  const wanted = (reference: FeatureReference): number => {
    const name = featureKey(reference)
    const own = plan.requirements.find(({ measurand }) => measurand.kind === 'feature'
      && featureKey(measurand.feature) === name && [
        'each', 'least', 'greatest', 'mean',
      ].includes(measurand.reducer))
    if (own !== undefined) return middle(own.limits)
    const fit = plan.requirements.find(
      ({ measurand }) => measurand.kind === 'clearance' && featureKey(measurand.hole) === name,
    )
    if (fit?.measurand.kind === 'clearance') return sizeOf(fit.measurand.shaft) + middle(fit.limits)
    return definitions.get(name)?.nominal ?? 1_000_000
  }
  return sizeOf
}

function middle({ low, high, target }: Limits): number {
  if (target !== null) return target
  if (low === null) return high ?? 0
  return high === null ? low : low + Math.trunc((high - low) / 2)
}
