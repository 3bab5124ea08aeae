import { parseQuantity, type ReaderUnit } from '@tenths/domain'

/** The unit in which a person of this shop types and reads a test pressure. */
const unitOf = (unit: ReaderUnit) => (unit === 'inch' ? 'poundPerSquareInch' : 'kilopascal')

/**
 * Pascals of what was typed; a unit may stand after the figure.
 * @throws DomainError when it cannot be read
 */
export function readPressure(text: string, unit: ReaderUnit): number {
  return parseQuantity(text, unitOf(unit))
}
