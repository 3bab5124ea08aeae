import type { ReaderUnit } from '@tenths/domain'
import type { Draft } from '../entry/entry-state.ts'
import type { Reading } from '../sheet/operation-sheet.ts'
import { readingFigure } from '../words/figures.ts'
import type { Cell } from './cells.ts'

/** What a cell of the grid shows. */
export interface CellView {
  readonly text: string
  /** Typing in it goes somewhere: it is empty, or its value is being corrected. */
  readonly isOpen: boolean
  readonly isCurrent: boolean
  /** Its value has not reached the service yet. */
  readonly isWaiting: boolean
  /** What stands in it is no value, is doubted, or was refused by the service. */
  readonly isBad: boolean
}

/** What all cells are looked up in. Maps and sets by the cells' keys. */
export interface CellFacts {
  readonly drafts: Readonly<Record<string, Draft>>
  readonly figures: ReadonlyMap<string, string>
  readonly current: string | null
  readonly correcting: string | null
  readonly waiting: ReadonlySet<string>
  /** What was typed where the service refused it. */
  readonly refused: ReadonlyMap<string, string>
}

/** The figure of each cell that has a value. */
export function figuresOf(
  cells: readonly Cell[], readingIn: (key: string) => Reading | null, unit: ReaderUnit,
): ReadonlyMap<string, string> {
  return new Map(cells.flatMap(({ key, feature }) => {
    const reading = readingIn(key)
    return reading === null ? [] : [[key, readingFigure(reading, feature.quantity, unit)]]
  }))
}

/**
 * What every cell shows now. A cell that shows what it did before keeps its very view, so that a key press draws the one
 * or two cells anew that it changes, and not all of them.
 */
export function viewCells(
  cells: readonly Cell[], facts: CellFacts, before: ReadonlyMap<string, CellView> | null,
): ReadonlyMap<string, CellView> {
  return new Map(cells.map(({ key }) => {
    const now = viewCell(key, facts)
    const then = before?.get(key)
    return [key, then !== undefined && isSameView(then, now) ? then : now]
  }))
}

function viewCell(key: string, { drafts, figures, current, correcting, waiting, refused }: CellFacts): CellView {
  const draft = drafts[key] ?? null
  const figure = figures.get(key)
  const wasRefused = draft === null && refused.has(key)
  return {
    text: draft?.text ?? figure ?? refused.get(key) ?? '',
    isOpen: figure === undefined || correcting === key,
    isCurrent: current === key,
    isWaiting: waiting.has(key),
    isBad: wasRefused || Boolean(draft?.sentence ?? draft?.doubt),
  }
}

function isSameView(one: CellView, other: CellView): boolean {
  return one.text === other.text && one.isOpen === other.isOpen && one.isCurrent === other.isCurrent
    && one.isWaiting === other.isWaiting && one.isBad === other.isBad
}
