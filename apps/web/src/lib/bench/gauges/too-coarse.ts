import { rootSumSquare, sayValue, type FeatureDefinition, type ReaderUnit, type Requirement } from '@tenths/domain'
import type { Gauge } from '../sheet/operation-sheet.ts'
import { dependsOn } from '../verdicts/of-feature.ts'

/**
 * What nothing can be proven of with this gauge: guarded limits that lie nearer together than twice its uncertainty. Of
 * a clearance the mate is taken to be known without any, so that it is surely so. Null when there is none.
 */
export function tooCoarse(
  gauge: Gauge, feature: FeatureDefinition, requirements: readonly Requirement[], unit: ReaderUnit,
): string | null {
  const hopeless = requirements.find((requirement) => {
    const { guard, limits: { low, high } } = requirement
    if (guard.kind === 'none' || low === null || high === null || !dependsOn(requirement, feature)) return false
    return 2 * guard.coverageFactor * uncertaintyOf(gauge, requirement) > high - low
  })
  if (hopeless === undefined) return null
  const { low, high } = hopeless.limits
  return `${gauge.mark} is too coarse for ${hopeless.title}: its limits are ${sayValue((high ?? 0) - (low ?? 0), gauge.quantity, unit)} apart, `
    + 'and every value will be not proven. Take a finer gauge.'
}

function uncertaintyOf({ standardUncertainty }: Gauge, { measurand }: Requirement): number {
  const isDifference = measurand.kind === 'feature' && ['range', 'out-of-round', 'taper'].includes(measurand.reducer)
  return isDifference ? rootSumSquare(standardUncertainty, standardUncertainty) : standardUncertainty
}
