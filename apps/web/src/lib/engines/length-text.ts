import { formatLength, nanometresPer, readerUnitSymbols, type ReaderUnit } from '@tenths/domain'

/**
 * A length as it would be typed, so that reading it back gives the very same nanometres: in the reader's unit where that
 * can say it whole in five decimals of an inch, else in millimetres, named.
 * @param value whole nanometres
 */
export function lengthText(value: number, unit: ReaderUnit): string {
  const inHundredThousandths = nanometresPer.inch / 100_000
  if (unit === 'inch' && value % inHundredThousandths === 0) {
    return trimmed(formatLength(value, { unit: 'inch', step: inHundredThousandths }, 'half-even'), 4)
  }
  const millimetres = trimmed(formatLength(value, { unit: 'millimetre', step: 1 }, 'half-even'), 2)
  return unit === 'millimetre' ? millimetres : `${millimetres} mm`
}

/** The same with its unit behind it, to be read rather than typed over. */
export function lengthWithUnit(value: number, unit: ReaderUnit): string {
  const text = lengthText(value, unit)
  const named = text.endsWith('mm') ? text : `${text} ${readerUnitSymbols[unit]}`
  // A figure and its unit stay on one line.
  return named.replace(' ', '\u00a0')
}

/** Without the zeros at its end, but for the decimals that the trade always writes. */
function trimmed(figure: string, decimals: number): string {
  const [whole = '', part = ''] = figure.split('.')
  return `${whole}.${part.replace(/0+$/, '').padEnd(decimals, '0')}`
}
