import type { readOperation, readPlan } from '@tenths/contract'
import { featureKey, type FeatureDefinition, type FeatureReference } from '@tenths/domain'
import type { z } from 'zod'

export type OperationAnswer = z.infer<(typeof readOperation)['answer']>
export type PlanAnswer = z.infer<(typeof readPlan)['answer']>

/** The latest measuring of a feature: what counts of it, and how it was taken. */
export interface Measured {
  readonly number: number
  readonly operationKey: string
  readonly standardUncertainty: number
  readonly isOnMate: boolean
  readonly values: readonly { readonly point: string; readonly station: string; readonly value: number }[]
}

/** What a machinist sees before measuring: the whole plan, this step of it, the parts in hand and their readings so far. */
export interface Situation {
  readonly plan: PlanAnswer
  readonly step: OperationAnswer
  readonly unit: 'inch' | 'millimetre'
  latest(reference: FeatureReference): Measured | null
  partAt(place: string): string
}

/** Puts plan and step together, and finds readings through places as the judge does. */
export function situationOf(plan: PlanAnswer, step: OperationAnswer, unit: Situation['unit']): Situation {
  const definitions = new Map(plan.features.map((feature) => [featureKey(feature), feature]))
  const parts = new Map(step.placed.map(({ place, partId }) => [place, partId]))
  return {
    plan,
    step,
    unit,
    latest(reference) {
      const partId = parts.get(reference.place)
      const passes = step.passes.filter((pass) => pass.partId === partId && pass.feature === reference.feature)
      const latest = passes.reduce<(typeof passes)[number] | null>(
        (newest, pass) => (newest === null || pass.number > newest.number ? pass : newest), null,
      )
      return latest === null ? null : measuredOf(latest, definitions.get(featureKey(reference)))
    },
    partAt(place) {
      const part = parts.get(place)
      if (part === undefined) throw new Error(`No part is in ${place}.`)
      return part
    },
  }
}

function measuredOf(pass: OperationAnswer['passes'][number], definition: FeatureDefinition | undefined): Measured {
  const superseded = new Set(pass.readings.map(({ supersedes }) => supersedes))
  const stations = new Map((definition?.points ?? []).map(({ key, station }) => [key, station]))
  return {
    number: pass.number,
    operationKey: pass.operationKey,
    standardUncertainty: pass.standardUncertainty,
    isOnMate: pass.setOn !== null,
    values: pass.readings
      .filter(({ id }) => !superseded.has(id))
      .map(({ point, value }) => ({ point, value, station: stations.get(point) ?? '' })),
  }
}
