import { positive } from '../in-range.ts'

/**
 * Permanent set of a bolt, in nanometres, over which it is looked at or scrapped. From memory; the maker
 * outranks.
 */
export const boltSetLimits = { look: 12_700, scrap: 25_400 } as const

/** What a bolt's set says: used again, looked at first, or scrap. */
export type BoltSetVerdict = 'reuse' | 'look' | 'scrap'

/**
 * Judges how much longer a released bolt is than before it was first tightened: over 0.0005 in look, over
 * 0.001 in scrap. A bolt that is tightened beyond yield is always new. Free lengths in nanometres.
 * @formula bolt-set
 */
export function boltSetVerdict(freeBefore: number, freeAfter: number): BoltSetVerdict {
  const set = positive(freeAfter, 'freeAfter') - positive(freeBefore, 'freeBefore')
  if (set > boltSetLimits.scrap) return 'scrap'
  return set > boltSetLimits.look ? 'look' : 'reuse'
}
