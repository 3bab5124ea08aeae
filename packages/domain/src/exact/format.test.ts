import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatLength, formatLengthWithUnit, lengthFormats, sayLength } from './format-length.ts'
import { formatQuantity, formatQuantityWithUnit } from './format-quantity.ts'
import { parseQuantity } from './parse-quantity.ts'
import { roundRatio } from './round-ratio.ts'

describe('a length on the page', () => {
  it('has as many decimals as its step, always', () => {
    expect(formatLength(17_780, lengthFormats.inchTenths, 'half-even')).toBe('0.0007')
    expect(formatLength(17_780, lengthFormats.inchHalfTenths, 'half-even')).toBe('0.00070')
    expect(formatLength(101_600_000, lengthFormats.millimetreMicrons, 'half-even')).toBe('101.600')
    expect(formatLength(0, lengthFormats.inchTenths, 'half-even')).toBe('0.0000')
    expect(formatLength(-2_540, lengthFormats.inchTenths, 'half-even')).toBe('−0.0001')
    expect(formatLengthWithUnit(7_000, lengthFormats.millimetreMicrons, 'half-even')).toBe('0.007 mm')
  })
  it('is rounded as the caller says', () => {
    expect(formatLength(3_810, lengthFormats.inchTenths, 'half-even')).toBe('0.0002')
    expect(formatLength(3_810, lengthFormats.inchTenths, 'down')).toBe('0.0001')
    expect(formatLength(6_350, lengthFormats.inchTenths, 'half-even')).toBe('0.0002')
    expect(formatLength(6_350, lengthFormats.inchTenths, 'half-away')).toBe('0.0003')
  })
  it('never shows minus nothing', () => {
    expect(formatLength(-100, lengthFormats.inchTenths, 'half-even')).toBe('0.0000')
  })
  it('refuses a step without finite decimals', () => {
    expect(() => formatLength(1, { unit: 'inch', step: 1_000_003 }, 'down')).toThrow(
      expect.objectContaining({ code: 'value-out-of-range' }))
  })
  it('stands in a sentence with the figures that tell it', () => {
    expect(sayLength(7_620, 'inch')).toBe('0.0003 in')
    expect(sayLength(1_270, 'inch')).toBe('0.00005 in')
    expect(sayLength(4_572, 'inch')).toBe('0.00018 in')
    expect(sayLength(7_000, 'millimetre')).toBe('0.007 mm')
    expect(sayLength(7_620, 'millimetre')).toBe('0.0076 mm')
  })
})

describe('a torque, angle, mass or pressure', () => {
  it('is read in its units and kept in whole base units', () => {
    expect(parseQuantity('45', 'newtonMetre')).toBe(45_000)
    expect(parseQuantity('45 lbf·ft', 'newtonMetre')).toBe(61_012)
    expect(parseQuantity('540 lbf in', 'newtonMetre')).toBe(61_012)
    expect(parseQuantity('60°', 'degree')).toBe(60_000)
    expect(parseQuantity('621,5', 'gram')).toBe(621_500)
    expect(parseQuantity('1 oz', 'gram')).toBe(28_350)
    expect(parseQuantity('100', 'poundPerSquareInch')).toBe(689_476)
  })
  it('is refused when unreadable, or in a unit of another quantity', () => {
    for (const text of ['', 'tight', '45 g', '4..5', '1e3']) {
      expect(() => parseQuantity(text, 'newtonMetre')).toThrow(expect.objectContaining({ code: 'number-unreadable' }))
    }
  })
  it('is written with fixed decimals', () => {
    expect(formatQuantity(61_012, 'poundForceFoot', 1, 'half-even')).toBe('45.0')
    expect(formatQuantityWithUnit(60_000, 'degree', 0, 'half-even')).toBe('60°')
    expect(formatQuantityWithUnit(-1_500, 'newtonMetre', 1, 'half-even')).toBe('−1.5 N·m')
  })
  it('comes back unchanged: tenths of a pound-foot are coarser than a millinewton metre', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 100_000 }), (tenths) => {
      const text = `${Math.floor(tenths / 10)}.${tenths % 10}`
      expect(formatQuantity(parseQuantity(text, 'poundForceFoot'), 'poundForceFoot', 1, 'half-even')).toBe(text)
    }))
  })
})

describe('an exact ratio', () => {
  it('is rounded by its remainder, half to even', () => {
    expect([1n, 3n, 5n, -1n, -3n].map((numerator) => roundRatio(numerator, 2n, 'half-even'))).toEqual([0, 2, 2, 0, -2])
    expect(roundRatio(10n ** 15n + 1n, 2n * 10n ** 15n, 'half-even')).toBe(1)
    expect(roundRatio(10n ** 15n - 1n, 2n * 10n ** 15n, 'half-even')).toBe(0)
    expect(roundRatio(-7n, 3n, 'floor')).toBe(-3)
    expect(roundRatio(-7n, 3n, 'ceiling')).toBe(-2)
  })
  it('is refused when it is too large to be kept', () => {
    expect(() => roundRatio(10n ** 20n, 1n, 'down')).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
  })
})
