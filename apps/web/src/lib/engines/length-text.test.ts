import { nanometresOf, parseLength } from '@tenths/domain'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lengthText } from './length-text.ts'

describe('a length as it would be typed', () => {
  it('writes what the trade writes', () => {
    expect(lengthText(101_600_000, 'inch')).toBe('4.0000')
    expect(lengthText(2_540, 'inch')).toBe('0.0001')
    expect(lengthText(79_000_000, 'millimetre')).toBe('79.00')
    expect(lengthText(79_000_000, 'inch')).toBe('79.00 mm')
  })

  it('reads back as the same nanometres, in either unit', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 1_000_000_000 }), fc.constantFrom('inch', 'millimetre'), (value, unit) => {
      expect(parseLength(lengthText(value, unit), unit)).toBe(nanometresOf(value))
    }))
  })
})
