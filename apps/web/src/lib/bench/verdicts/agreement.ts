import type { Verdict } from '@tenths/domain'

/** A requirement on which browser and service say different things of the same readings. */
export interface Disagreement {
  readonly requirement: string
  readonly here: Verdict
  readonly there: Verdict
}

/** Where two judges differ in what counts: kind, values or side. Wording may differ with the reader's unit. */
export function disagreements(here: readonly Verdict[], there: readonly Verdict[]): readonly Disagreement[] {
  const known = new Map(there.map((verdict) => [verdict.requirement, verdict]))
  return here.flatMap((mine) => {
    const theirs = known.get(mine.requirement)
    if (theirs === undefined || isSameVerdict(mine, theirs)) return []
    return [{ requirement: mine.requirement, here: mine, there: theirs }]
  })
}

function isSameVerdict(one: Verdict, other: Verdict): boolean {
  return one.kind === other.kind && one.least === other.least && one.greatest === other.greatest && one.side === other.side
}
