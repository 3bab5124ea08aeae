import type { PlausibilityNumber } from '@tenths/contract'
import { DomainError, round, type PlausibilityUnit, type ReaderUnit } from '@tenths/domain'
import type { z } from 'zod'
import { parameterText, parameterUnitWords, readParameter } from './rule-figures.ts'

export type DoubtNumber = z.infer<typeof PlausibilityNumber>

/** A number of plausibility as it would be typed: 0.0030, 0.003 of a bore, 10 %, 2.5 °C, 8, 1.5 times. */
export function doubtText(value: number, unit: PlausibilityUnit, reader: ReaderUnit): string {
  switch (unit) {
    case 'length': case 'per-diameter': case 'percent': return parameterText({ name: '', title: '', unit, value }, reader)
    case 'degrees': case 'mass': return String(value / 1_000)
    case 'count': case 'times': return String(value)
  }
}

/** What was typed, as it is kept. @throws DomainError with a sentence for the field */
export function readDoubtNumber(text: string, unit: PlausibilityUnit, reader: ReaderUnit): number {
  switch (unit) {
    case 'length': case 'per-diameter': case 'percent': return readParameter(text, unit, reader)
    // Degrees, grams and factors are read as a percentage is, to a millionth.
    case 'degrees': case 'mass': return round(readParameter(text, 'percent', reader) * 1_000, 'half-even')
    case 'count': return readCount(text)
    case 'times': return readParameter(text, 'percent', reader)
  }
}

/** What stands behind the field. */
export function doubtUnitWords(unit: PlausibilityUnit, reader: ReaderUnit): string {
  switch (unit) {
    case 'length': case 'per-diameter': case 'percent': return parameterUnitWords(unit, reader)
    case 'degrees': return '°C'
    case 'mass': return 'g'
    case 'count': return 'values'
    case 'times': return 'times'
  }
}

/** A number as it is read in a sentence. */
export function sayDoubtNumber(value: number, unit: PlausibilityUnit, reader: ReaderUnit): string {
  const text = doubtText(value, unit, reader)
  return text.endsWith('mm') ? text : `${text} ${doubtUnitWords(unit, reader)}`
}

function readCount(text: string): number {
  if (!/^\d{1,6}$/.test(text.trim())) throw new DomainError('number-unreadable', `“${text.trim().slice(0, 24)}” is no whole number.`)
  return Number(text)
}

/** Whose numbers a rule has. */
export function levelOf(numbers: readonly Pick<DoubtNumber, 'value' | 'starter'>[]): { words: string; isShops: boolean } {
  const own = numbers.filter(({ value, starter }) => value !== starter).length
  return own === 0 ? { words: 'starter', isShops: false } : { words: `the shop’s, ${own} of ${numbers.length}`, isShops: true }
}
