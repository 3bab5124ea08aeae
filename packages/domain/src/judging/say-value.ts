import { sayLength } from '../exact/format-length.ts'
import { formatQuantityWithUnit } from '../exact/format-quantity.ts'
import type { ReaderUnit } from '../exact/length-unit.ts'
import { round } from '../exact/rounding.ts'
import type { QuantityUnitName } from '../exact/quantity-unit.ts'
import type { Quantity } from '../features/feature.ts'

/** Which unit a reader of inches or millimetres types and expects of the other quantities. */
export const readerQuantityUnits: Record<Exclude<Quantity, 'length'>, Record<ReaderUnit, QuantityUnitName>> = {
  torque: { inch: 'poundForceFoot', millimetre: 'newtonMetre' },
  angle: { inch: 'degree', millimetre: 'degree' },
  mass: { inch: 'gram', millimetre: 'gram' },
  pressure: { inch: 'poundPerSquareInch', millimetre: 'kilopascal' },
}

/**
 * A value of any quantity with its unit, for a sentence. Base unit in; a fraction is rounded half to even.
 */
export function sayValue(value: number, quantity: Quantity, unit: ReaderUnit): string {
  return quantity === 'length'
    ? sayLength(value, unit)
    : formatQuantityWithUnit(round(value, 'half-even'), readerQuantityUnits[quantity][unit], 1, 'half-even')
}
