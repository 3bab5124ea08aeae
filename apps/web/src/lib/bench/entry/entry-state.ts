import type { Doubt } from '@tenths/domain'

/** What stands in a cell and is not stored yet. */
export interface Draft {
  readonly text: string
  /** Why the text is no value; the cell keeps text and focus. */
  readonly sentence: string | null
  /** Why the value is unlikely; another Enter stands by it, and a note where it is beyond belief. */
  readonly doubt: Doubt | null
  /** Why a value beyond belief is right. */
  readonly note: string
}

const unsaid = { sentence: null, doubt: null, note: '' } as const

/** A value that was false: its cell takes another, with the reason. */
export interface Correction {
  readonly cell: string
  readonly reason: string
}

/** What is being typed in a grid. Cells are named by their keys. */
export interface EntryState {
  readonly current: string | null
  readonly drafts: Readonly<Record<string, Draft>>
  readonly correction: Correction | null
  /** Cells in the order in which they got their values here, for undo. */
  readonly trail: readonly string[]
}

export function startEntry(current: string | null): EntryState {
  return { current, drafts: {}, correction: null, trail: [] }
}

export function draftAt(state: EntryState, cell: string): Draft | null {
  return state.drafts[cell] ?? null
}

/** The focus goes to a cell; a correction that was not begun in earnest ends. */
export function moveTo(state: EntryState, cell: string): EntryState {
  if (cell === state.current) return state
  const given = state.correction !== null && state.drafts[state.correction.cell] === undefined
  return { ...state, current: cell, correction: given ? null : state.correction }
}

/** Text as it is typed: what was said about the former text is void. */
export function typeText(state: EntryState, cell: string, text: string): EntryState {
  return { ...state, current: cell, drafts: { ...state.drafts, [cell]: { text, ...unsaid } } }
}

/** The text is no value, or the service refused it: it stays, with the sentence, and the focus stays. */
export function refuse(state: EntryState, cell: string, sentence: string, text?: string): EntryState {
  const kept = text ?? state.drafts[cell]?.text ?? ''
  return { ...state, current: cell, drafts: { ...state.drafts, [cell]: { ...unsaid, text: kept, sentence } } }
}

/** The value is unlikely: it stays until it is confirmed or typed anew. */
export function doubt(state: EntryState, cell: string, found: Doubt, text?: string): EntryState {
  const kept = text ?? state.drafts[cell]?.text ?? ''
  return { ...state, current: cell, drafts: { ...state.drafts, [cell]: { ...unsaid, note: state.drafts[cell]?.note ?? '', text: kept, doubt: found } } }
}

/** Why a value beyond belief is right, in the words of whoever read it. */
export function giveNote(state: EntryState, cell: string, note: string): EntryState {
  const draft = state.drafts[cell]
  return draft === undefined ? state : { ...state, drafts: { ...state.drafts, [cell]: { ...draft, note } } }
}

/** The value is on its way: its draft is gone, the focus goes on. */
export function enter(state: EntryState, cell: string, next: string | null): EntryState {
  const correction = state.correction?.cell === cell ? null : state.correction
  return { current: next ?? cell, drafts: without(state.drafts, cell), correction, trail: [...state.trail, cell] }
}

/** A stored value is to be replaced because it was false. */
export function beginCorrection(state: EntryState, cell: string, text: string, reason = ''): EntryState {
  return { ...typeText(state, cell, text), correction: { cell, reason } }
}

export function giveReason(state: EntryState, reason: string): EntryState {
  return state.correction === null ? state : { ...state, correction: { ...state.correction, reason } }
}

/** Typed text is given up; a correction with it. */
export function giveUp(state: EntryState, cell: string): EntryState {
  const correction = state.correction?.cell === cell ? null : state.correction
  return { ...state, drafts: without(state.drafts, cell), correction }
}

/**
 * One step back: typed text goes first; after that the cell that got the last value, which is then corrected. Null when
 * there is nothing to take back.
 */
export function stepBack(state: EntryState): { state: EntryState; correct: string | null } | null {
  const cell = state.current
  if (cell !== null && state.drafts[cell] !== undefined) return { state: giveUp(state, cell), correct: null }
  const last = state.trail.at(-1)
  if (last === undefined) return null
  return { state: { ...state, current: last, trail: state.trail.slice(0, -1) }, correct: last }
}

function without(drafts: EntryState['drafts'], cell: string): EntryState['drafts'] {
  return Object.fromEntries(Object.entries(drafts).filter(([key]) => key !== cell))
}
