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
  roughness: { inch: 'microinch', millimetre: 'micrometre' },
  unbalance: { inch: 'ounceInch', millimetre: 'gramMillimetre' },
  force: { inch: 'poundForce', millimetre: 'newton' },
}

/** Decimals in which a unit is read where they are not one: what roughness testers and balancing machines show. */
const decimals: Partial<Record<QuantityUnitName, number>> = { micrometre: 2, ounceInch: 3, gramMillimetre: 0, newton: 0 }

export function decimalsOf(unit: QuantityUnitName): number {
  return decimals[unit] ?? 1
}

/**
 * A value of any quantity with its unit, for a sentence. Base unit in; a fraction is rounded half to even.
 */
export function sayValue(value: number, quantity: Quantity, unit: ReaderUnit): string {
  if (quantity === 'length') return sayLength(value, unit)
  const unitName = readerQuantityUnits[quantity][unit]
  return formatQuantityWithUnit(round(value, 'half-even'), unitName, decimalsOf(unitName), 'half-even')
}
