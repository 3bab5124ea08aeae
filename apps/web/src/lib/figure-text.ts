import { lengthText } from './engines/length-text.ts'
import {
  decimalsOf, formatQuantity, parseLength, parseQuantity, quantityUnits, readerQuantityUnits, readerUnitSymbols, type Quantity, type ReaderUnit,
} from '@tenths/domain'

/** A value of any quantity as it would be typed. @param value whole base units */
export function figureText(value: number, quantity: Quantity, unit: ReaderUnit): string {
  if (quantity === 'length') return lengthText(value, unit)
  const unitName = readerQuantityUnits[quantity][unit]
  return formatQuantity(value, unitName, decimalsOf(unitName), 'half-even')
}

/** A typed value in whole base units. @throws DomainError with a sentence for the field */
export function readFigure(text: string, quantity: Quantity, unit: ReaderUnit): number {
  return quantity === 'length' ? parseLength(text, unit) : parseQuantity(text, readerQuantityUnits[quantity][unit])
}

/** What stands behind figures of this quantity. */
export function unitOf(quantity: Quantity, unit: ReaderUnit): string {
  return quantity === 'length' ? readerUnitSymbols[unit] : quantityUnits[readerQuantityUnits[quantity][unit]].symbol
}
