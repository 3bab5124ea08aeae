import type { readOperation } from '@tenths/contract'
import type { FeatureDefinition, FeatureReference } from '@tenths/domain'
import { featureKey } from '@tenths/domain'
import type { AnswerOf } from '../../api/call.ts'

/** Everything one step needs at the bench, as the service answers it. */
export type OperationSheet = AnswerOf<typeof readOperation>
export type Pass = OperationSheet['passes'][number]
export type Reading = Pass['readings'][number]
export type Gauge = OperationSheet['gauges'][number]
export type Finding = OperationSheet['findings'][number]
export type Concession = OperationSheet['concessions'][number]
export type ObservationState = OperationSheet['observations'][number]
export type InspectionResult = OperationSheet['inspections'][number]
export type LotPlace = OperationSheet['lots'][number]
export type SignOff = OperationSheet['signOffs'][number]

/** The features that this step measures, in the order a hand moves; mates, which it only reads, are left out. */
export function measuredHere(sheet: Pick<OperationSheet, 'features' | 'operation'>): readonly FeatureDefinition[] {
  const known = new Map(sheet.features.map((feature) => [featureKey(feature), feature]))
  return sheet.operation.features.flatMap((reference) => known.get(featureKey(reference)) ?? [])
}

/** The part that sits in a place now; null when the place is empty. */
export function partIn(sheet: Pick<OperationSheet, 'placed'>, place: string): { partId: string; mark: string } | null {
  return sheet.placed.find((entry) => entry.place === place) ?? null
}

/** Whether two references name one feature of one place. */
export function isSameFeature(one: FeatureReference, other: FeatureReference): boolean {
  return one.place === other.place && one.feature === other.feature
}
