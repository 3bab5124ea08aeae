import type { Doubt, GaugeResolution, Quantity, ReaderUnit } from '@tenths/domain'
import {
  checkMagnitude, checkResolution, DomainError, nanometresOf, parseLength, parseQuantity, readerQuantityUnits,
} from '@tenths/domain'

/** What is known of a value before it is typed. */
export interface EntryContext {
  readonly quantity: Quantity
  readonly unit: ReaderUnit
  /** The size to expect; null where none can be named, or when the gauge was set on the mate. */
  readonly nominal: number | null
  /** What a value without a nominal size is usually near: a target or a limit; null where nobody knows. */
  readonly expected: number | null
  /** Of the gauge in hand; null where a length is not read on a gauge of the shop. */
  readonly resolution: GaugeResolution | null
}

export type Entry =
  | { readonly kind: 'value'; readonly value: number; readonly doubt: Doubt | null }
  | { readonly kind: 'unreadable'; readonly sentence: string }

/**
 * Reads what was typed into a cell: a figure in the reader's unit, or one that names its unit. A value that looks like a
 * slip comes with the doubt, never corrected.
 */
export function readEntry(text: string, context: EntryContext): Entry {
  const { quantity, unit, resolution } = context
  if (text.trim() === '') return { kind: 'unreadable', sentence: 'Type what the gauge shows.' }
  try {
    if (quantity !== 'length') {
      const value = parseQuantity(text, readerQuantityUnits[quantity][unit])
      return { kind: 'value', value, doubt: doubtOf(value, context) }
    }
    const value = parseLength(text, unit)
    const doubt = doubtOf(value, context)
    // A value in the wrong unit is not too fine for the gauge: say what is really wrong with it.
    if (doubt === null && resolution !== null) checkResolution(nanometresOf(value), resolution)
    return { kind: 'value', value, doubt }
  } catch (error) {
    if (error instanceof DomainError) return { kind: 'unreadable', sentence: error.message }
    throw error
  }
}

/** A size with a nominal cannot be 25 or 1000 times off; a clearance can be far outside its limits and still be true. */
function doubtOf(value: number, { nominal, expected }: EntryContext): Doubt | null {
  if (nominal !== null) return checkMagnitude(value, nominal)
  const found = checkMagnitude(value, expected)
  return found && { ...found, outcome: 'ask', sentence: found.sentence.replace('nominal size', 'usual value') }
}
