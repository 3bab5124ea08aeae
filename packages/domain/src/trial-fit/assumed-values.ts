import { featureKey } from '../features/feature.ts'
import type { FeatureDefinition } from '../features/feature.ts'
import { bigEnd, mainBearing, mainHousing, rodBearing } from '../features/references.ts'
import { round } from '../exact/rounding.ts'
import type { FeaturePass, Measurements } from '../measuring/pass.ts'
import type { Plan } from '../plan/plan-types.ts'

/**
 * The figure a feature is taken to have while nobody has measured it: its nominal, or for a bearing in place its housing
 * (measured or nominal) less two nominal shell walls. Null where no drawing says anything: a gap is what it is filed to.
 */
export function assumedValue(plan: Plan, definition: FeatureDefinition, measurements: Measurements): number | null {
  const { engine, parts } = plan.input
  const number = Number(definition.place.split('/')[1])
  if (sameFeature(definition, mainBearing(number))) {
    return bearingBore(measurements.latestPass(mainHousing(number)), engine.mains.housing, parts.mainShell.wall)
  }
  if (sameFeature(definition, rodBearing(number))) {
    return bearingBore(measurements.latestPass(bigEnd(number)), engine.rodJournals.housing, parts.rodShell.wall)
  }
  return definition.nominal
}

function sameFeature(one: FeatureDefinition, other: { place: string; feature: string }): boolean {
  return featureKey(one) === featureKey(other)
}

function bearingBore(housing: FeaturePass | null, nominal: number, wall: number): number {
  const values = housing?.setOn === null ? housing.readings.map(({ value }) => value) : []
  const mean = values.length === 0 ? nominal : values.reduce((sum, value) => sum + value, 0) / values.length
  return round(mean, 'half-even') - 2 * wall
}
