import { draftAt, type Draft } from '../entry/entry-state.ts'
import type { EntryDesk } from '../entry/entry-desk.svelte.ts'
import type { OutboxEntry } from '../outbox/outbox-entry.ts'
import type { TypedReading } from '../outbox/typed-reading.ts'
import type { Cell } from './cells.ts'

/** What stands between the text in a cell and a stored value. */
export interface CellTrouble {
  readonly cell: Cell
  /** The cell's value is being corrected, which wants a reason. */
  readonly correcting: boolean
  readonly draft: Draft | null
  /** What the service refused, while nothing else is typed in its cell. */
  readonly refused: OutboxEntry<TypedReading> | null
  /** The value in full, where it was typed by its last digits. */
  readonly echo: string | null
}

/** What is to be said at the cell in hand; null where nothing is, as at most cells: none of it is drawn there. */
export function troubleInHand(desk: EntryDesk): CellTrouble | null {
  const cell = desk.current
  if (cell === null) return null
  const correcting = desk.state.correction?.cell === cell.key
  const draft = draftAt(desk.state, cell.key)
  const refused = draft === null ? desk.sheet.refusedAt(cell.key) : null
  const echo = draft === null ? null : desk.echoOf(cell, draft.text)
  const isSaid = correcting || refused !== null || echo !== null || draft?.sentence || draft?.doubt
  return isSaid ? { cell, correcting, draft, refused, echo } : null
}
