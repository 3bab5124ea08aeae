import type { Direction } from './move.ts'

/** What a key asks of a cell. */
export type CellKey = { readonly kind: 'move'; readonly direction: Direction } | { readonly kind: 'enter' | 'give-up' | 'undo' }

interface Pressed {
  readonly key: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
}

/**
 * Reads a key pressed in a cell; null leaves it to the text. Left and right leave the cell only at the end of its text,
 * so that a figure can still be edited; Backspace takes the last value back where there is no text to take back.
 */
export function readCellKey({ key, ctrlKey, metaKey }: Pressed, text: string, caret: number | null): CellKey | null {
  if (key === 'Enter') return { kind: 'enter' }
  if (key === 'Escape') return { kind: 'give-up' }
  if ((key === 'z' || key === 'Z') && (ctrlKey || metaKey)) return { kind: 'undo' }
  if (key === 'Backspace' && text === '') return { kind: 'undo' }
  if (key === 'ArrowUp') return { kind: 'move', direction: 'up' }
  if (key === 'ArrowDown') return { kind: 'move', direction: 'down' }
  if (key === 'ArrowLeft' && (caret ?? 0) === 0) return { kind: 'move', direction: 'left' }
  if (key === 'ArrowRight' && (caret ?? text.length) >= text.length) return { kind: 'move', direction: 'right' }
  return null
}
