import { DomainError } from '../errors.ts'
import { sayLength } from './format-length.ts'
import { nanometresOf, NANOMETRES_PER_TENTH, type Nanometres } from './length.ts'
import type { ReaderUnit } from './length-unit.ts'

/** A size typed by its last digits, resolved, and in full for the eye that checks it. */
export interface TailSize {
  readonly size: Nanometres
  readonly echo: string
}

/** What the last typed digit may stand for, the usual place first: tenths or tenths of them; microns likewise. */
const places: Record<ReaderUnit, readonly number[]> = {
  inch: [NANOMETRES_PER_TENTH, NANOMETRES_PER_TENTH / 10],
  millimetre: [1_000, 100],
}

/**
 * How far from nominal a journal is believed by its last digits alone: beyond the greatest usual undersize, 0.060 in.
 * From memory.
 */
const REACH = 1_524_000

const tail = /^\d(?:\s?\d){1,5}$/

/** Whether a text can only be the last digits of a size: two to six of them, no decimal mark, no sign, no unit. */
export function isTail(text: string): boolean {
  return tail.test(text.trim())
}

/**
 * Reads a journal typed by its last digits: `09 95`, `995` and `9950` are all 2.0995 in on a nominal of 2.1000. The
 * last digit is taken at the usual place (0.0001 in, 0.001 mm), or one place finer where the usual one would lie
 * farther from nominal than any undersize.
 * @param nominal what the journal should be, its undersize taken off
 * @throws DomainError `length-unreadable` when the text is no tail, two sizes are equally near, or none is near
 */
export function parseTail(text: string, nominal: Nanometres, unit: ReaderUnit): TailSize {
  if (!isTail(text)) throw unreadable(`“${text.trim().slice(0, 24)}” is not the last digits of a size.`)
  const digits = text.replace(/\s/g, '')
  for (const place of places[unit]) {
    const period = place * 10 ** digits.length
    const least = nominal - (((nominal - Number(digits) * place) % period) + period) % period
    const [below, above] = [nominal - least, least + period - nominal]
    if (Math.min(below, above) > REACH) continue
    if (below === above) {
      throw unreadable(`“${digits}” could be ${sayLength(least, unit)} or ${sayLength(least + period, unit)}: type more digits.`)
    }
    const size = nanometresOf(below < above ? least : least + period)
    return { size, echo: sayLength(size, unit) }
  }
  throw unreadable(`No size near ${sayLength(nominal, unit)} ends in “${digits}”: type it in full.`)
}

function unreadable(sentence: string): DomainError {
  return new DomainError('length-unreadable', sentence)
}
