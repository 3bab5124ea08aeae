import { DomainError } from '../errors.ts'
import { add, nanometresOf, type Nanometres } from './length.ts'
import type { ReaderUnit } from './length-unit.ts'
import { parseLength } from './parse-length.ts'

/**
 * What feelers say of a gap: the thickest pack that entered and the thinnest that did not; null where none was tried.
 * The gap is `enters` at least and less than `stops`.
 */
export interface FeelerGap {
  readonly enters: Nanometres
  readonly stops: Nanometres | null
}

/**
 * Reads feelers as they are called out: `18/19` is a gap that 0.018 in enters and 0.019 in does not; `18` alone is a
 * minimum; `10+8/10+9` are packs of blades. Inch: whole figures are thousandths and figures below 1 inches.
 * Millimetre: whole figures are hundredths and figures with a decimal mark millimetres.
 * @throws DomainError `length-unreadable`, or `value-out-of-range` when the blade that stops is not the thicker one
 */
export function parseFeelers(text: string, unit: ReaderUnit): FeelerGap {
  const packs = text.trim().split('/').map((pack) => pack.split('+').map((blade) => parseBlade(blade, unit)))
  const [enters, stops, ...more] = packs.map((blades) => add(...blades))
  if (enters === undefined || more.length > 0) throw unreadable(text)
  if (stops !== undefined && stops <= enters) {
    throw new DomainError('value-out-of-range', 'The blade that does not enter is thicker than the one that does.')
  }
  return { enters, stops: stops ?? null }
}

const figure = /^(\d+)?([.,]\d+)?$/

function parseBlade(text: string, unit: ReaderUnit): Nanometres {
  const match = figure.exec(text.trim())
  if (match === null || match[0] === '') throw unreadable(text)
  const [, whole, part] = match
  const blade = unit === 'inch'
    ? parseLength(match[0], Number(whole ?? 0) === 0 ? 'inch' : 'thousandth')
    : part === undefined ? nanometresOf(parseLength(match[0], 'micron') * 10) : parseLength(match[0], 'millimetre')
  if (blade <= 0) throw unreadable(text)
  return blade
}

function unreadable(text: string): DomainError {
  return new DomainError('length-unreadable', `“${text.trim().slice(0, 24)}” is no feeler. Type 18/19: one enters, the next does not.`)
}
