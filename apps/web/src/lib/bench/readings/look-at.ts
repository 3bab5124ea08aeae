import type { FeatureDefinition } from '@tenths/domain'
import type { EntryDesk } from '../entry/entry-desk.svelte.ts'
import type { Cell } from '../grid/cells.ts'
import type { Pass, Reading } from '../sheet/operation-sheet.ts'

/** What is known of the cell in hand. */
export interface AtHand {
  readonly cell: Cell | null
  readonly pass: Pass | null
  /** The value that counts in the cell. */
  readonly reading: Reading | null
  readonly isCorrected: boolean
  readonly others: readonly Pass[]
  /** What the verdicts speak of: the feature in hand, or the one that was filled by the last Enter. */
  readonly spoken: FeatureDefinition | null
  readonly spokenPass: Pass | null
}

/** Looks up what stands beneath the grid; cheap, so that a page may look at each key and draw later. */
export function lookAt({ current: cell, spoken, sheet, state }: EntryDesk): AtHand {
  return {
    cell,
    pass: cell && sheet.openPass(cell.feature),
    reading: cell && sheet.readingIn(cell.key),
    isCorrected: cell !== null && state.correction?.cell === cell.key,
    others: cell === null ? [] : sheet.otherPasses(cell.feature),
    spoken,
    spokenPass: spoken && sheet.openPass(spoken),
  }
}
