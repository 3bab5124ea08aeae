import type { Warmth } from '../temperature/correct-reading.ts'
import type { FeelerInterval } from './feeler-zone.ts'

/** A measurand that every needed reading is there for: what is compared with the limits, in the base unit. */
export interface MeasuredValue {
  readonly kind: 'measured'
  /** Compared with the low limit. */
  readonly least: number
  /** Compared with the high limit. */
  readonly greatest: number
  readonly standardUncertainty: number
  readonly readings: readonly string[]
  /** Of feelers: what the low and the high limit are compared with, each an interval. */
  readonly blades?: { readonly low: FeelerInterval; readonly high: FeelerInterval }
  /** What its readings were corrected for, to be told beside it. */
  readonly corrected?: readonly CorrectedFeature[]
}

/** A feature whose readings were brought to 20 °C, and by how much at its middle, in nanometres. */
export interface CorrectedFeature {
  readonly title: string
  readonly warmth: Warmth
  readonly change: number
}

/** Why there is no value: what must still be measured, and a sentence for each thing that is wrong. */
export interface Unmeasured {
  readonly kind: 'not-measured'
  readonly missing: readonly string[]
  readonly reasons: readonly string[]
}

export type Value = MeasuredValue | Unmeasured

/** All gaps of several features as one. */
export function joinUnmeasured(parts: readonly Unmeasured[]): Unmeasured {
  return {
    kind: 'not-measured',
    missing: [...new Set(parts.flatMap(({ missing }) => missing))],
    reasons: [...new Set(parts.flatMap(({ reasons }) => reasons))],
  }
}
