import { partOfPlace } from '@tenths/domain'
import type { LotPlace } from '../sheet/operation-sheet.ts'

/** What is kept for a part that carries neither lot nor serial. */
export const NO_NUMBER = 'no number'

/** Places by kind of part, in the order in which they are listed. */
export function byKind(places: readonly LotPlace[]): readonly { kind: string; places: readonly LotPlace[] }[] {
  const kindOf = ({ place }: LotPlace) => partOfPlace(place).kind
  return [...new Set(places.map(kindOf))].map((kind) => ({
    kind: kind.replaceAll('-', ' '), places: places.filter((place) => kindOf(place) === kind),
  }))
}
