import { DomainError } from '@tenths/domain'

/**
 * A temperature as it is typed, in thousandths of a °C.
 * @throws DomainError `number-unreadable`, or `value-out-of-range` for one that nobody measures an engine part at
 */
export function readDegrees(text: string): number {
  const match = /^\s*([−-]?\d{1,3})(?:[.,](\d{1,3}))?\s*(?:°\s*C)?\s*$/i.exec(text)
  if (match === null) throw new DomainError('number-unreadable', `“${text.trim().slice(0, 24)}” is no temperature. Type °C, such as 21.5.`)
  const [, whole = '', part = ''] = match
  const sign = /^[−-]/.test(whole) ? -1 : 1
  const thousandths = sign * (Number(whole.replace(/^[−-]/, '')) * 1_000 + Number(part.padEnd(3, '0')))
  if (thousandths < -40_000 || thousandths > 250_000) {
    throw new DomainError('value-out-of-range', 'A part is measured between −40 and 250 °C.')
  }
  return thousandths
}
