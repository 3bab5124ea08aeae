import { changeableNumbers, DomainError, numberAt, starterPlausibilityNumbers } from '@tenths/domain'
import { describe, expect, it } from 'vitest'
import { doubtText, doubtUnitWords, readDoubtNumber } from './doubt-figures.ts'

const numbers = changeableNumbers.flatMap((group) => group.numbers)

describe('a number by which values are doubted', () => {
  it.each(['inch', 'millimetre'] as const)('is kept as it is when it is shown and saved in %s', (reader) => {
    for (const { key, unit, least, most } of numbers) {
      for (const value of [numberAt(starterPlausibilityNumbers, key), least, most]) {
        expect(readDoubtNumber(doubtText(value, unit, reader), unit, reader), key).toBe(value)
      }
    }
  })
  it('is shown in the reader’s unit, and a temperature in degrees', () => {
    expect(doubtText(76_200, 'length', 'inch')).toBe('0.0030')
    expect(doubtText(-5_500, 'degrees', 'inch')).toBe('-5.5')
    expect(doubtUnitWords('length', 'millimetre')).toBe('mm')
  })
  it('is refused with a sentence when it is no figure', () => {
    for (const unit of ['length', 'degrees', 'count', 'times', 'percent'] as const) {
      expect(() => readDoubtNumber('a lot', unit, 'inch'), unit).toThrow(DomainError)
    }
    expect(() => readDoubtNumber('8.5', 'count', 'inch')).toThrow('“8.5” is no whole number.')
  })
})
