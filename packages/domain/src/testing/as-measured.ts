import type { FeatureReference } from '../features/feature.ts'
import { featureKey } from '../features/feature.ts'
import { judge } from '../judging/judge.ts'
import type { Verdict } from '../judging/verdict.ts'
import type { FeaturePass, Measurements } from '../measuring/pass.ts'
import { measurementsOf } from '../measuring/pass.ts'
import type { Plan } from '../plan/plan-types.ts'

/** One value at every point of each feature, read with u of `uncertainty` base units; every place holds a part named after it. */
export function asMeasured(
  plan: Plan, values: readonly (readonly [FeatureReference, number])[], uncertainty = 10,
): Measurements {
  const passes = values.map(([reference, value]): FeaturePass => {
    const definition = plan.features.find((one) => featureKey(one) === featureKey(reference))
    if (definition === undefined) throw new Error(`The plan does not measure ${featureKey(reference)}.`)
    return {
      partId: reference.place, feature: reference.feature, number: 1, standardUncertainty: uncertainty, state: definition.state,
      setOn: null, readings: definition.points.map(({ key }) => ({ id: `${featureKey(reference)}@${key}`, point: key, value })),
    }
  })
  const places = [...new Set(plan.features.map(({ place }) => place))]
  return measurementsOf(places.map((place) => ({ place, partId: place })), passes)
}

/** The verdict on one requirement of the plan, worded in millimetres and grams. */
export function verdictOn(plan: Plan, key: string, measurements: Measurements): Verdict {
  const requirement = plan.requirements.find((one) => one.key === key)
  if (requirement === undefined) throw new Error(`The plan has no ${key}.`)
  return judge(requirement, measurements, plan.features, { coverageFactor: 2, unit: 'millimetre' })
}
