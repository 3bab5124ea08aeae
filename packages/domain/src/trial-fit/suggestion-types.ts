import type { PartKind, Place } from '../features/feature.ts'
import type { VerdictKind } from '../judging/verdict.ts'

/** A part that would sit elsewhere. */
export interface SuggestedMove {
  readonly partId: string
  readonly from: Place
  readonly to: Place
}

/** A fit as it is and as it would be; values in the base unit. */
export interface FitBeforeAndAfter {
  readonly requirement: string
  readonly title: string
  readonly before: FitValue
  readonly after: FitValue
}

export interface FitValue {
  readonly kind: VerdictKind
  readonly least: number
  readonly greatest: number
}

/** The fits of a suggestion as a whole. Distances are from the target, margins to the nearest limit (negative: beyond it). */
export interface Pairing {
  readonly worstDistance: number
  readonly sumOfDistances: number
  readonly leastMargin: number
  readonly outside: number
}

/** Parts of one kind in other places, so that the fit farthest from its target comes nearer. */
export interface Suggestion {
  readonly kind: PartKind
  readonly title: string
  readonly moves: readonly SuggestedMove[]
  readonly fits: readonly FitBeforeAndAfter[]
  readonly before: Pairing
  readonly after: Pairing
  /** What was measured in place and must be measured again there, by title. */
  readonly measureAgain: readonly string[]
}
