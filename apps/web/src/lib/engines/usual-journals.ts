import type { Arrangement, PinSharing } from '@tenths/domain'

/**
 * How many journals a crank usually has: a main on either side of each throw, and one rod journal per rod, or per pair
 * where two rods share one (common practice, no source). The person may type another number of mains.
 */
export function usualJournals(
  arrangement: Arrangement, cylinders: number, sharing: PinSharing,
): { mains: number; rodJournals: number } {
  const hasBanks = arrangement === 'v' || arrangement === 'flat'
  const onePerRod = !hasBanks || sharing === 'one-rod'
  const throws = onePerRod ? cylinders : Math.ceil(cylinders / 2)
  const rodJournals = onePerRod || sharing === 'split-pin' ? cylinders : throws
  return { mains: throws + 1, rodJournals }
}
