import type { FeatureReference, PartKind, Place } from '../features/feature.ts'
import { partOfPlace } from '../features/feature.ts'
import {
  bigEnd, compressionRings, deckClearanceAt, mainBearing, mainHousing, pinEndPlayAt, ringBackClearance, ringSideClearance,
  rodBearing,
} from '../features/references.ts'

/** Parts that may change places among themselves before the engine is built. */
export interface Family {
  readonly kind: PartKind
  /** The fit that they are paired by; other fits of theirs are minded where they are known. */
  readonly fit: string
  /** For shells: what is read in place, and the housing in which it was read. */
  readonly inHousing: ((place: number) => { readonly bore: FeatureReference; readonly housing: FeatureReference }) | null
  /** What else was measured with the part in place and holds for that very part. */
  readonly alsoMeasured: (place: number) => readonly FeatureReference[]
}

const nothing = (): readonly FeatureReference[] => []

/** Rods stay: each is resized with its own cap and bushed to its own pin. Common practice, no source. */
export const families: readonly Family[] = [
  {
    kind: 'piston', fit: 'piston-in-bore', inHousing: null,
    alsoMeasured: (cylinder) => [
      ...compressionRings.flatMap((ring) => [ringSideClearance(ring, cylinder), ringBackClearance(ring, cylinder)]),
      ringSideClearance('oil-ring', cylinder), deckClearanceAt(cylinder), pinEndPlayAt(cylinder),
    ],
  },
  { kind: 'piston-pin', fit: 'pin-in-piston', inHousing: null, alsoMeasured: (cylinder) => [pinEndPlayAt(cylinder)] },
  {
    kind: 'main-bearing', fit: 'main-bearing', alsoMeasured: nothing,
    inHousing: (journal) => ({ bore: mainBearing(journal), housing: mainHousing(journal) }),
  },
  {
    kind: 'rod-bearing', fit: 'rod-bearing', alsoMeasured: nothing,
    inHousing: (cylinder) => ({ bore: rodBearing(cylinder), housing: bigEnd(cylinder) }),
  },
]

/** The number of a place such as `piston/3`. */
export function numberOf(place: Place): number {
  return partOfPlace(place).number ?? 1
}

/** What a place is called on the part that belongs there: `cylinder 5`, `main journal 2`. */
export function seatTitle(place: Place): string {
  const { kind, number } = partOfPlace(place)
  if (kind === 'main-bearing') return `main journal ${number}`
  return kind === 'rod-bearing' ? `rod ${number}` : `cylinder ${number}`
}
