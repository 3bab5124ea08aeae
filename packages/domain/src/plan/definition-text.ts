import { DomainError } from '../errors.ts'
import { featureKey } from '../features/feature.ts'
import type { Requirement } from '../judging/requirement.ts'
import { canonicalJson } from './canonical-json.ts'
import type { Json } from './canonical-json.ts'
import type { Operation, Plan } from './plan-types.ts'

/**
 * Canonical text of what a signature under one operation stands for: its requirements with limits, guard
 * and what is compared, the features and points measured, things to see, areas to test, places whose lots are
 * kept, how bobweights are made up, cautions, number of signatures.
 * Two plans in which the operation is the same give equal text; where a limit came from, minutes and bench
 * do not count.
 * @throws DomainError `feature-unknown` when the plan has no such operation
 */
export function definitionText(plan: Plan, operationKey: string): string {
  const operation = plan.operations.find(({ key }) => key === operationKey)
  if (operation === undefined) {
    throw new DomainError('feature-unknown', `The plan has no operation “${operationKey}”.`, 'operation')
  }
  const judged = new Set(operation.requirements)
  const definition = {
    operation: operation.key,
    title: operation.title,
    requirements: plan.requirements.filter(({ key }) => judged.has(key)).map(requirementDefinition),
    features: featureDefinitions(plan, operation),
    observations: operation.observations,
    cautions: operation.cautions,
    signatures: operation.signatures,
    inspections: operation.inspections,
    lots: operation.lots,
    bobweights: operation.bobweights,
  }
  return canonicalJson(definition as unknown as Json)
}

function requirementDefinition({ key, title, quantity, measurand, limits, guard, critical }: Requirement) {
  return { key, title, quantity, measurand, limits, guard, critical }
}

function featureDefinitions(plan: Plan, operation: Operation) {
  const measured = new Set(operation.features.map(featureKey))
  return plan.features
    .filter((feature) => measured.has(featureKey(feature)))
    .map((feature) => ({
      feature: featureKey(feature),
      points: feature.points.map(({ key }) => key),
      state: feature.state,
    }))
}
