import type { FeatureReference, Quantity } from '../features/feature.ts'

/** How the points of one feature become one value: D6's reducers and the two forms. */
export const reducers = ['each', 'least', 'greatest', 'mean', 'range', 'out-of-round', 'taper'] as const
export type Reducer = (typeof reducers)[number]

/** What is compared with the limits. */
export type Measurand =
  | { readonly kind: 'feature'; readonly feature: FeatureReference; readonly reducer: Reducer }
  | {
      readonly kind: 'clearance'
      readonly hole: FeatureReference
      readonly shaft: FeatureReference
      /** `overall`: least hole less greatest shaft anywhere, and the reverse; `by-station`: the same at each shared station. */
      readonly pairing: 'overall' | 'by-station'
    }
  | {
      /**
       * How far one part stands from the least, or the greatest, of a set that it belongs to: by so much a weight is over
       * the lightest.
       */
      readonly kind: 'apart'
      readonly feature: FeatureReference
      readonly set: readonly FeatureReference[]
      readonly from: 'least' | 'greatest'
    }
  | {
      readonly kind: 'sum'
      /** Base-unit constant added to the terms, half a stroke for example. */
      readonly constant: number
      readonly terms: readonly { readonly feature: FeatureReference; readonly factor: number; readonly reducer: 'least' | 'greatest' | 'mean' }[]
    }

/** Limits in the quantity's base unit; null where there is none. Advice is shown and never stops a signature. */
export interface Limits {
  readonly low: number | null
  readonly high: number | null
  readonly target: number | null
  readonly adviceLow: number | null
  readonly adviceHigh: number | null
}

/** Whether a value must clear its limit by the guard band (ISO 14253-1, U = k·u) or is simply accepted. */
export type Guard = { readonly kind: 'none' } | { readonly kind: 'guarded'; readonly coverageFactor: number }

/** Whose figure it is. Earlier entries outrank later ones. */
export const ruleLevels = ['part-maker', 'engine-maker', 'shop', 'starter'] as const
export type RuleLevel = (typeof ruleLevels)[number]

/** Where a limit comes from, in full: kept with the plan, shown at *Why?*. */
export interface Why {
  readonly rule: string
  readonly revision: number
  readonly level: RuleLevel
  /** The formula in words and symbols. */
  readonly formula: string
  /** The same formula with this engine's numbers in it, one line a limit. */
  readonly worked: readonly string[]
  readonly source: string
}

/** What to do when a value is outside, by side. `feature` is the one that is worked on. */
export interface RemedyRule {
  readonly action: 'hone' | 'grind' | 'file' | 'face' | 'deck' | 'lighten' | 'replace' | 'thinner-shell' | 'thicker-shell' | 'shim' | 'advise' | 'investigate'
  readonly feature: FeatureReference | null
  /** Said after the figure: which machine, what to watch. */
  readonly words: string
}

/** One line of the fit sheet. */
export interface Requirement {
  /** Stable across re-planning: fit and position, such as `pin-in-rod/1`. */
  readonly key: string
  readonly fit: string
  readonly title: string
  /** Cylinder, journal or other number that the line belongs to; null when to the whole engine. */
  readonly position: number | null
  readonly quantity: Quantity
  readonly measurand: Measurand
  readonly limits: Limits
  readonly guard: Guard
  readonly critical: boolean
  readonly remedy: { readonly low: RemedyRule | null; readonly high: RemedyRule | null }
  readonly why: Why
}
