import type { Quantity, ReaderUnit } from '@tenths/domain'
import { sayValue } from '@tenths/domain'

/** A value as a person reads it, its unit behind it. */
export { sayValue }

/** The same figure without its unit, for a column whose heading names the unit. */
export function figureOf(value: number, quantity: Quantity, unit: ReaderUnit): string {
  return sayValue(value, quantity, unit).replace(/[^\d]+$/, '')
}

/** A reading as a figure: of feelers the blade that entered and the one that did not. */
export function readingFigure(
  { value, blades }: { readonly value: number; readonly blades?: { readonly stops: number | null } }, quantity: Quantity, unit: ReaderUnit,
): string {
  const figure = figureOf(value, quantity, unit)
  if (blades === undefined) return figure
  return blades.stops === null ? `${figure}/` : `${figure}/${figureOf(blades.stops, quantity, unit)}`
}

/** The unit that stands behind figures of this quantity. */
export function unitSymbol(quantity: Quantity, unit: ReaderUnit): string {
  return /[^\d]+$/.exec(sayValue(0, quantity, unit))?.[0].trim() ?? ''
}
