import { formatQuantity, quantityUnits, type QuantityUnitName, type ReaderUnit } from '@tenths/domain'

/** A crankshaft is weighed in pounds or kilograms, where everything else on it is weighed in grams. */
export const crankMassUnits: Record<ReaderUnit, QuantityUnitName> = { inch: 'pound', millimetre: 'kilogram' }

/** The unit's symbol for the label. */
export function crankMassUnit(unit: ReaderUnit): string {
  return quantityUnits[crankMassUnits[unit]].symbol
}

/** Milligrams as they would be typed: with as many decimals as it takes to come back the same, and no noughts behind. */
export function massText(mass: number, unit: ReaderUnit): string {
  return formatQuantity(mass, crankMassUnits[unit], 6, 'half-even').replace(/\.?0+$/, '')
}
