import type { FeatureDefinition, Neighbour } from '../features/feature.ts'
import type { BesidePart, FeaturePass, Measurements } from './pass.ts'

/** What a feature read now is read beside: kept with the pass, so that a later change can be seen. */
export function besideNow({ beside = [] }: FeatureDefinition, measurements: Measurements): BesidePart[] {
  return beside.flatMap((neighbour) => {
    const partId = measurements.partAt(neighbour.place)
    return partId === null
      ? []
      : [{ partId, feature: neighbour.feature, pass: latestNumber(neighbour, measurements) }]
  })
}

/**
 * The neighbour that is no longer what it was when the pass was taken: another part sits there, or its feature
 * was measured anew because metal came off. The readings were true of a state that is gone. Null when nothing
 * changed, or when nobody recorded what the pass was taken beside.
 */
export function changedNeighbour(
  { beside: neighbours = [] }: FeatureDefinition, { beside: taken = [] }: FeaturePass, measurements: Measurements,
): Neighbour | null {
  if (taken.length === 0) return null
  return neighbours.find((neighbour) => {
    const partId = measurements.partAt(neighbour.place)
    const number = latestNumber(neighbour, measurements)
    return !taken.some((one) => one.partId === partId && one.feature === neighbour.feature && one.pass === number)
  }) ?? null
}

function latestNumber({ place, feature }: Neighbour, measurements: Measurements): number {
  return feature === null ? 0 : measurements.latestPass({ place, feature })?.number ?? 0
}
