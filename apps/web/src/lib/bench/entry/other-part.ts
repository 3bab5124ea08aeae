import { doubtOfPosition, partOfPlace, type Doubt, type FeatureReference } from '@tenths/domain'
import type { OperationSheet } from '../sheet/operation-sheet.ts'

type Placed = Pick<OperationSheet, 'placed'>

/** Where the part of a scanned tag sits; null where no part of that mark does. Scanners may type without capitals. */
export function placeOfMark({ placed }: Placed, mark: string | null): string | null {
  return placed.find((one) => one.mark.toLowerCase() === mark?.toLowerCase())?.place ?? null
}

/**
 * The doubt about a value for another part than the one whose tag was scanned, of the same kind. A part without a number is
 * the only one of its kind.
 */
export function otherPart(sheet: Placed, mark: string | null, { place }: FeatureReference): Doubt | null {
  const tagged = partOfPlace(placeOfMark(sheet, mark) ?? '')
  const typed = partOfPlace(place)
  return tagged.kind !== typed.kind || tagged.number === null || typed.number === null
    ? null : doubtOfPosition(typed.number, tagged.number)
}
