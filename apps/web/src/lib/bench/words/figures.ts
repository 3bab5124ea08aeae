import type { Quantity, ReaderUnit } from '@tenths/domain'
import { sayValue } from '@tenths/domain'

/** A value as a person reads it, its unit behind it. */
export { sayValue }

/** The same figure without its unit, for a column whose heading names the unit. */
export function figureOf(value: number, quantity: Quantity, unit: ReaderUnit): string {
  return sayValue(value, quantity, unit).replace(/[^\d]+$/, '')
}

/** The unit that stands behind figures of this quantity. */
export function unitSymbol(quantity: Quantity, unit: ReaderUnit): string {
  return /[^\d]+$/.exec(sayValue(0, quantity, unit))?.[0].trim() ?? ''
}
