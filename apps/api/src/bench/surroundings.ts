import {
  featureKey, likeFeatures, type FeatureDefinition, type KnownPass, type Operation, type PlacedPart, type Plan, type Surroundings,
} from '@tenths/domain'
import type { Queryable } from '../database/queryable.ts'
import { featuresAt, featuresOfMeasurand, requirementsOf } from '../judging/features-of.ts'
import { loadFullPasses } from './load-full-passes.ts'

/** What is known around a feature that is measured at a step: its own passes, those of its like and of its mates. */
export async function loadSurroundings(
  database: Queryable, jobId: string,
  { plan, operation, placed, definition }: {
    plan: Plan; operation: Operation; placed: readonly PlacedPart[]; definition: FeatureDefinition
  },
): Promise<Surroundings & { readonly passes: readonly KnownPass[] }> {
  const requirements = requirementsOf(plan, operation)
  const around = { operation, features: featuresAt(plan, operation), requirements, placed, passes: [], bore: plan.input.engine.bore }
  const own = featureKey(definition)
  const mates = requirements
    .map(({ measurand }) => featuresOfMeasurand(measurand))
    .filter((references) => references.some((reference) => featureKey(reference) === own))
    .flat()
  const partAt = new Map(placed.map(({ place, partId }) => [place, partId]))
  const wanted = new Map([definition, ...likeFeatures(definition, around), ...mates].map((one) => [featureKey(one), one]))
  const features = [...wanted.values()].flatMap(({ place, feature }) => {
    const partId = partAt.get(place)
    return partId === undefined ? [] : [{ partId, feature }]
  })
  return { ...around, passes: await loadFullPasses(database, jobId, features) }
}
