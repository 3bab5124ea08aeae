/** What kind of reading is doubted: each has its own scatter and its own usual range. */
export const readingKinds = [
  'bore', 'housing', 'journal', 'pin', 'bushing', 'piston', 'shell-wall',
  'ring-gap', 'ring-side-clearance', 'end-play', 'rod-side-clearance', 'bolt-stretch', 'oil-clearance', 'deck-clearance',
  'other',
] as const
export type ReadingKind = (typeof readingKinds)[number]

/** A typed length and what is known around it, in nanometres; null or empty where nothing is known. */
export interface ReadingContext {
  readonly kind: ReadingKind
  /** As received, or after the work: wear is real at intake. */
  readonly stage: 'intake' | 'finished'
  readonly value: number
  readonly nominal: number | null
  /** The other values of the same feature, or of its like. */
  readonly neighbours: readonly number[]
  /** Size at which a comparator was set to zero, and what one turn of its dial counts. */
  readonly settingSize: number | null
  readonly dialRevolution: number | null
  /** The same point before metal came off. */
  readonly previous: number | null
  readonly isCoated: boolean
  /** Size of the part that goes in (or around) with a running fit. */
  readonly mate: { readonly shape: 'hole' | 'shaft'; readonly value: number } | null
  /** Bore that a ring gap belongs to. */
  readonly bore: number | null
}
