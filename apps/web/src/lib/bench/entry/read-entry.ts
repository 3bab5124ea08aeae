import type { GaugeResolution, Quantity, SizeTyping } from '@tenths/domain'
import { checkResolution, DomainError, parseQuantity, readerQuantityUnits, readSize } from '@tenths/domain'

/** What is known of a value before it is typed. */
export interface EntryContext {
  readonly quantity: Quantity
  /** How a length is typed with the gauge in hand. */
  readonly typing: SizeTyping
  /** Of the gauge in hand; null where a length is not read on a gauge of the shop. */
  readonly resolution: GaugeResolution | null
}

export type Entry =
  | {
      readonly kind: 'value'
      readonly value: number
      readonly blades: { readonly stops: number | null } | null
      /** The whole of what was typed in short; null where it was typed in full. */
      readonly echo: string | null
      /** Why the gauge cannot show such a figure; null when it can. */
      readonly tooFine: string | null
    }
  | { readonly kind: 'unreadable'; readonly sentence: string }

/**
 * Reads what was typed into a cell: a figure in the reader’s unit, one that names its unit, or what the gauge in hand
 * shows in short (a deviation, last digits, two blades).
 */
export function readEntry(text: string, { quantity, typing, resolution }: EntryContext): Entry {
  if (text.trim() === '') return { kind: 'unreadable', sentence: 'Type what the gauge shows.' }
  try {
    if (quantity !== 'length') {
      const value = parseQuantity(text, readerQuantityUnits[quantity][typing.unit])
      return { kind: 'value', value, blades: null, echo: null, tooFine: null }
    }
    const { value, shown, blades, echo } = readSize(text, typing)
    const tooFine = resolution === null || blades !== null ? null : refusalOf(() => checkResolution(shown, resolution))
    return { kind: 'value', value, blades, echo, tooFine }
  } catch (error) {
    if (error instanceof DomainError) return { kind: 'unreadable', sentence: error.message }
    throw error
  }
}

function refusalOf(check: () => void): string | null {
  try {
    check()
    return null
  } catch (error) {
    if (error instanceof DomainError) return error.message
    throw error
  }
}
