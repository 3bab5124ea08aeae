import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { DomainError } from '../errors.ts'
import { formatLength } from './format-length.ts'
import { nanometresOf } from './length.ts'
import { parseDeviation } from './parse-deviation.ts'
import { parseLength } from './parse-length.ts'

function codeOf(read: () => unknown): string {
  try {
    read()
  } catch (error) {
    if (error instanceof DomainError) return error.code
    throw error
  }
  return 'read'
}

describe('a typed length', () => {
  it.each([
    ['4.0312', 'inch', 102_392_480],
    ['4.03125 in', 'millimetre', 102_393_750],
    ['.5', 'inch', 12_700_000],
    ['5.', 'inch', 127_000_000],
    ['101,6', 'millimetre', 101_600_000],
    ['101.6mm', 'inch', 101_600_000],
    ['0.927"', 'millimetre', 23_545_800],
    ['4 1/32', 'inch', 102_393_750],
    ['4-1/32 in', 'inch', 102_393_750],
    ['1/64 in', 'millimetre', 396_875],
    ['+3 tenths', 'inch', 7_620],
    ['−1.5 tenths', 'inch', -3_810],
    ['-0.5 thou', 'inch', -12_700],
    ['7 µm', 'inch', 7_000],
    ['7 μm', 'inch', 7_000],
    ['0.5 um', 'inch', 500],
    ['2 microns', 'inch', 2_000],
    ['25 MM', 'inch', 25_000_000],
  ] as const)('%s (%s where no unit is named) is %i nm', (text, unit, nanometres) => {
    expect(parseLength(text, unit)).toBe(nanometres)
  })

  it.each(['', 'abc', '4..5', '1,234.5', '1e-3', '4 in in', '12 furlongs', '1/0', '--3', '0x10', 'NaN', '1 2', '∞', '3'.repeat(60)])(
    '“%s” is refused as unreadable',
    (text) => expect(codeOf(() => parseLength(text, 'inch'))).toBe('length-unreadable'),
  )

  it('refuses a part of a nanometre instead of rounding it', () => {
    expect(codeOf(() => parseLength('1/128 in', 'inch'))).toBe('length-not-exact')
    expect(codeOf(() => parseLength('0.0001 µm', 'micron'))).toBe('length-not-exact')
    expect(codeOf(() => parseLength('1/3', 'inch'))).toBe('length-not-exact')
  })

  it('refuses what is past the safe whole numbers', () => {
    expect(codeOf(() => parseLength('999999999999', 'inch'))).toBe('value-out-of-range')
  })

  it('comes back unchanged when it is written out and read again, in inches and millimetres', () => {
    fc.assert(fc.property(fc.integer({ min: -40_000_000, max: 40_000_000 }), (steps) => {
      const inches = nanometresOf(steps * 254)
      expect(parseLength(formatLength(inches, { unit: 'inch', step: 254 }, 'half-even'), 'inch')).toBe(inches)
      const millimetres = nanometresOf(steps)
      const shown = formatLength(millimetres, { unit: 'millimetre', step: 1 }, 'half-even')
      expect(parseLength(shown, 'millimetre')).toBe(millimetres)
    }))
  })

  it('never throws anything but a refusal with a code, whatever is typed', () => {
    fc.assert(fc.property(fc.string(), (text) => {
      expect(['read', 'length-unreadable', 'length-not-exact', 'value-out-of-range'])
        .toContain(codeOf(() => parseLength(text, 'inch')))
    }))
  })
})

describe('a deviation from a setting size', () => {
  const setting = parseLength('4.0300', 'inch')
  it('is added in tenths or microns', () => {
    expect(parseDeviation('+3', setting, 'tenth')).toBe(parseLength('4.0303', 'inch'))
    expect(parseDeviation('−1.5', setting, 'tenth')).toBe(parseLength('4.02985', 'inch'))
    expect(parseDeviation('+3', nanometresOf(100_000_000), 'micron')).toBe(100_003_000)
  })
  it('is taken off where the gauge turns to plus for a smaller bore', () => {
    expect(parseDeviation('+4', setting, 'tenth', 'plus-is-smaller')).toBe(parseLength('4.0296', 'inch'))
  })
})
