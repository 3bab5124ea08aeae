import fc from 'fast-check'
import { expect, it } from 'vitest'
import { wholeNumber } from './whole-number.ts'

it('reads every exact whole number as itself', () => {
  fc.assert(fc.property(fc.maxSafeInteger(), (value) => wholeNumber(String(value)) === value))
})

it.each(['9007199254740993', '-9007199254740993', '9223372036854775807', '1.5', 'NaN'])('refuses %s', (text) => {
  expect(() => wholeNumber(text)).toThrow(RangeError)
})
