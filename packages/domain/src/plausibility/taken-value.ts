import type { FeatureDefinition, FeatureReference, MeasuringState } from '../features/feature.ts'
import type { Requirement } from '../judging/requirement.ts'
import type { PlacedPart } from '../measuring/pass.ts'
import type { Stage } from '../plan/plan-types.ts'
import type { TemperatureTold, Warmth } from '../temperature/correct-reading.ts'

/** A reading as it was stored, superseded or not. */
export interface KnownReading {
  readonly id: string
  readonly point: string
  readonly value: number
  readonly supersedes: string | null
  /** Name of whoever read it. */
  readonly by: string
}

/** A pass as it was taken so far. */
export interface KnownPass extends TemperatureTold {
  readonly partId: string
  readonly feature: string
  readonly number: number
  readonly operationKey: string
  /** Standard uncertainty u of one reading, in the base unit. */
  readonly standardUncertainty: number
  readonly state: readonly MeasuringState[]
  readonly setOn: { readonly partId: string; readonly feature: string } | null
  readonly isVoid: boolean
  readonly readings: readonly KnownReading[]
}

/** What a step knows around a value that is typed there. */
export interface Surroundings {
  readonly operation: { readonly key: string; readonly stage: Stage; readonly features: readonly FeatureReference[] }
  /** The features measured at the step and those of their mates. */
  readonly features: readonly FeatureDefinition[]
  /** The requirements judged at the step. */
  readonly requirements: readonly Requirement[]
  readonly placed: readonly PlacedPart[]
  /** Every pass of those features, earlier ones too. */
  readonly passes: readonly KnownPass[]
  /** Nominal bore of the engine, for what goes by it. */
  readonly bore: number
}

/** A value on its way to be stored, in the base unit. */
export interface TakenValue {
  readonly definition: FeatureDefinition
  readonly point: string
  readonly value: number
  readonly passNumber: number
  readonly isSetOnMate: boolean
  readonly state: readonly MeasuringState[]
  /** Name of whoever typed it. */
  readonly by: string
  /** Of one reading of the gauge in hand. */
  readonly standardUncertainty: number
  readonly settingSize: number | null
  /** Temperatures told for the pass; null where they were not. `material` is null where nothing is corrected. */
  readonly warmth: (Omit<Warmth, 'material'> & { readonly material: Warmth['material'] | null }) | null
  /** It is the first value of its pass: what holds for the whole pass is asked about once. */
  readonly opensPass: boolean
}

/** The readings of a pass that count: those that no correction supersedes. */
export function countingOf(pass: KnownPass): readonly KnownReading[] {
  const superseded = new Set(pass.readings.map(({ supersedes }) => supersedes))
  return pass.readings.filter(({ id }) => !superseded.has(id))
}
