import type { FeatureReference, PartKind, Place } from '../features/feature.ts'
import { partOfPlace } from '../features/feature.ts'
import { bigEnd, mainBearing, mainHousing, rodBearing } from '../features/references.ts'

/** Parts that may change places among themselves before the engine is built. */
export interface Family {
  readonly kind: PartKind
  /** What the suggestion is called. */
  readonly title: string
  /** The fit that they are paired by; other fits of theirs are minded where they are known. */
  readonly fit: string
  /** For shells: what is read in place, and the housing in which it was read. */
  readonly inHousing: ((place: number) => { readonly bore: FeatureReference; readonly housing: FeatureReference }) | null
}

/** Rods stay: each is resized with its own cap and bushed to its own pin. Common practice, no source. */
export const families: readonly Family[] = [
  { kind: 'piston', title: 'Pistons to bores', fit: 'piston-in-bore', inHousing: null },
  { kind: 'piston-pin', title: 'Pins to pistons', fit: 'pin-in-piston', inHousing: null },
  {
    kind: 'main-bearing', title: 'Shells to main journals', fit: 'main-bearing',
    inHousing: (journal) => ({ bore: mainBearing(journal), housing: mainHousing(journal) }),
  },
  {
    kind: 'rod-bearing', title: 'Shells to rods', fit: 'rod-bearing',
    inHousing: (cylinder) => ({ bore: rodBearing(cylinder), housing: bigEnd(cylinder) }),
  },
]

/** The number of a place such as `piston/3`. */
export function numberOf(place: Place): number {
  return partOfPlace(place).number ?? 1
}

/** What to do about the mark of a part that changes places: `Mark piston P3 as cylinder 5.` */
export function markingSentence(mark: string, place: Place): string {
  const { kind, number } = partOfPlace(place)
  switch (kind) {
    case 'main-bearing': return `Mark shells ${mark} as main journal ${number}.`
    case 'rod-bearing': return `Mark shells ${mark} as rod ${number}.`
    case 'piston-pin': return `Mark pin ${mark} as cylinder ${number}.`
    default: return `Mark ${kind.replaceAll('-', ' ')} ${mark} as cylinder ${number}.`
  }
}
