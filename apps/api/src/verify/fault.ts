/** Something that does not hold: where in the route, if it belongs to a step, and what. */
export interface Fault {
  readonly step: string | null
  readonly sentence: string
}

/** Collects faults under a step's name. */
export type Blame = (step: string | null, sentence: string) => void
