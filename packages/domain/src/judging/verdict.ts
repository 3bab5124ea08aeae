/** The four things that can be said of a requirement. */
export const verdictKinds = ['within', 'not-proven', 'outside', 'not-measured'] as const
export type VerdictKind = (typeof verdictKinds)[number]

export const verdictTitles: Record<VerdictKind, string> = {
  within: 'Within',
  'not-proven': 'Not proven',
  outside: 'Outside',
  'not-measured': 'Not measured',
}

/** Version of the judge: browser and server state it, and unequal versions ask for a reload. */
export const JUDGE_VERSION = 4

/** What to do about a value outside its limits. */
export interface Remedy {
  readonly action: string
  /** Base unit, on diameter; null when a part must be changed rather than cut. */
  readonly amount: number | null
  readonly feature: { readonly place: string; readonly feature: string } | null
  /** Whether the amount brings the value to the target, only inside the limits, or neither. */
  readonly reaches: 'target' | 'limits' | 'neither'
  readonly sentence: string
}

/** The judge's answer for one requirement; a pure function of plan, readings and settings. */
export interface Verdict {
  readonly requirement: string
  readonly kind: VerdictKind
  /** Least and greatest value compared with the low and the high limit; null when not measured. */
  readonly least: number | null
  readonly greatest: number | null
  /** Expanded uncertainty U of the value, and the guard band kept from each limit (0 under simple acceptance). */
  readonly uncertainty: number | null
  readonly guardBand: number
  /** Probability of conformity (JCGM 106, normal), 0 to 1. */
  readonly probability: number | null
  readonly side: 'low' | 'high' | 'both' | null
  /** What is still to be measured, as `place#feature@point`. */
  readonly missing: readonly string[]
  /** Ids of the readings that the verdict rests on. */
  readonly readings: readonly string[]
  readonly remedy: Remedy | null
  readonly advice: string | null
}
