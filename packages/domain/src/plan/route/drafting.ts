import type { BobweightRule } from '../../balance/bobweight-rule.ts'
import { round } from '../../exact/rounding.ts'
import type { FeatureDefinition, FeatureReference, Place } from '../../features/feature.ts'
import type { BenchKind, Inspection, Observation, Stage } from '../plan-types.ts'
import type { LeftOut, OperationDraft, StageRoute } from './route-context.ts'

/** What a step says beyond what every step must say. */
interface Details {
  readonly features?: readonly (readonly FeatureDefinition[])[]
  readonly observations?: readonly Observation[]
  readonly cautions?: readonly string[]
  readonly signatures?: 1 | 2
  readonly inspections?: readonly Inspection[]
  readonly lots?: readonly Place[]
  readonly bobweights?: BobweightRule | null
  /** Left out of this route when false. */
  readonly when?: boolean
}

/** A step of a stage, or that it is left out. */
export type Step = { readonly draft: OperationDraft; readonly when: boolean }

/** Starts the steps of one stage. */
export function stepsOf(stage: Stage) {
  return (
    key: string,
    title: string,
    bench: BenchKind,
    minutes: number,
    after: readonly string[],
    details: Details = {},
  ): Step => ({
    when: details.when ?? true,
    draft: {
      key,
      title,
      stage,
      bench,
      minutes,
      after,
      features: (details.features ?? []).flat().map(referenceOf),
      observations: details.observations ?? [],
      cautions: details.cautions ?? [],
      signatures: details.signatures ?? 1,
      ...(details.inspections === undefined ? {} : { inspections: details.inspections }),
      ...(details.bobweights ? { bobweights: details.bobweights } : {}),
      ...(details.lots === undefined || details.lots.length === 0 ? {} : { lots: details.lots }),
    },
  })
}

/** Something to be seen. */
export function see(key: string, title: string): Observation {
  return { key, title }
}

/** Something to be seen and put into words. */
export function seeAndSay(key: string, title: string, label: string): Observation {
  return { key, title, asks: { kind: 'words', label } }
}

/** What stands in the air as long as a block before its sizes count: 2 hours, from memory. */
export const WHOLE_BLOCK = 120
/** A small part: half an hour, from memory. */
export const SMALL_PART = 30

/** Part and gauge side by side until both are as warm as the room, before a final reading counts. */
export function soak(title: string, minutes: number): Observation {
  return { key: 'soak', title, asks: { kind: 'since', minutes } }
}

/** Something to be seen where the part is there. */
export function seeIf(there: boolean, key: string, title: string): readonly Observation[] {
  return there ? [see(key, title)] : []
}

/** Sorts steps into those that the route has and those that it leaves out. */
export function stageRoute(steps: readonly Step[]): StageRoute {
  const leftOut = (step: Step): LeftOut => ({ key: step.draft.key, after: step.draft.after })
  return {
    steps: steps.filter(({ when }) => when).map(({ draft }) => draft),
    leftOut: steps.filter(({ when }) => !when).map(leftOut),
  }
}

/**
 * Standard minutes by size: `whole` on a V8 with its eight cylinders (or five mains, or four rod journals),
 * of which a third is setting up and does not shrink. From memory, common practice; the spread is a quarter
 * either way.
 */
export function minutesFor(whole: number, count: number, countOfV8: number): number {
  return round(whole / 3 + (whole * 2 * count) / (3 * countOfV8), 'half-even')
}

function referenceOf({ place, feature }: FeatureDefinition): FeatureReference {
  return { place, feature }
}
