import {
  featureKey, measurementsOf, plan, type FeatureDefinition, type FeaturePass, type FeatureReference, type Measurand, type Measurements, type Requirement,
} from '../src/index.ts'
import { planInput, v8, v8Parts } from '../src/testing/engines.ts'
import { generator } from './timing.ts'

/** A V8 short block, fully measured: as many lines of its fit sheet as asked for, and the readings that they rest on. */
export interface MeasuredShortBlock {
  readonly requirements: readonly Requirement[]
  readonly features: ReturnType<typeof plan>['features']
  readonly measurements: Measurements
  readonly passes: readonly FeaturePass[]
  readonly readings: number
}

/** Every feature that a measurand looks at. */
function referencesOf(measurand: Measurand): readonly FeatureReference[] {
  switch (measurand.kind) {
    case 'feature': return [measurand.feature]
    case 'clearance': return [measurand.hole, measurand.shaft]
    case 'apart': return [measurand.feature, ...measurand.set]
    case 'sum': return measurand.terms.map(({ feature }) => feature)
  }
}

/** Middle of what a line allows, or a little inside its one limit. */
function aimOf({ limits: { low, high, target } }: Requirement): number {
  if (target !== null) return target
  if (low !== null && high !== null) return Math.floor((low + high) / 2)
  return low !== null ? low + 25_400 : (high ?? 0) / 2
}

/** A size for every feature, so that each fit stands at its aim: holes follow shafts, what has no mate its nominal. */
function sizesFor(requirements: readonly Requirement[], features: MeasuredShortBlock['features']): ReadonlyMap<string, number> {
  const sizes = new Map(features.map((feature) => [featureKey(feature), feature.nominal ?? 0]))
  for (const requirement of requirements) {
    const { measurand } = requirement
    if (measurand.kind === 'clearance') {
      sizes.set(featureKey(measurand.hole), (sizes.get(featureKey(measurand.shaft)) ?? 0) + aimOf(requirement))
    } else if (measurand.kind === 'feature' && (measurand.reducer === 'each' || measurand.reducer === 'mean')) {
      sizes.set(featureKey(measurand.feature), aimOf(requirement))
    }
  }
  return sizes
}

/** Bores that were read before the last cut, too. */
const readBefore = 3

/**
 * A finished short block: every fit near its aim, with readings scattered by a tenth; its first bores were read before the last
 * cut, too. Lengths alone, which the libraries add as lengths.
 */
export function measuredShortBlock(lines: number): MeasuredShortBlock {
  const whole = plan(planInput(v8, v8Parts))
  const requirements = whole.requirements.filter(({ quantity }) => quantity === 'length').slice(0, lines)
  const used = new Set(requirements.flatMap(({ measurand }) => referencesOf(measurand).map(featureKey)))
  const features = whole.features.filter((feature) => used.has(featureKey(feature)))
  const sizes = sizesFor(requirements, features)
  const random = generator(7)
  const bores = new Set(features.filter(({ feature }) => feature.startsWith('bore-')).slice(0, readBefore))
  const passOver = (definition: FeatureDefinition, number: number): FeaturePass => ({
    partId: definition.place, feature: definition.feature, number, standardUncertainty: 317.5, state: definition.state, setOn: null,
    readings: definition.points.map(({ key }) => ({
      id: `${featureKey(definition)}@${key}/${number}`, point: key,
      value: (sizes.get(featureKey(definition)) ?? 0) + Math.floor(random() * 2) * 2_540,
    })),
  })
  const passes = features.flatMap((definition) => (bores.has(definition) ? [passOver(definition, 1), passOver(definition, 2)] : [passOver(definition, 1)]))
  const placed = [...new Set(features.map(({ place }) => place))].map((place) => ({ place, partId: place }))
  return {
    requirements, features, passes, measurements: measurementsOf(placed, passes),
    readings: passes.reduce((sum, pass) => sum + pass.readings.length, 0),
  }
}
