import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import Qty from 'js-quantities'
import { describe, expect, it } from 'vitest'
import {
  add, nanometresOf, parseLength, parseQuantity, sizeOf, subtract, type LengthUnit, type QuantityUnitName,
} from '../../packages/domain/src/index.ts'

// Independent oracles: js-quantities (a general units library, doubles) and decimal.js (decimal arithmetic).
const lengths: readonly (readonly [LengthUnit, string, number])[] = [
  ['inch', 'in', 1], ['millimetre', 'mm', 1], ['micron', 'um', 1], ['thousandth', 'in', 1e-3], ['tenth', 'in', 1e-4],
]
const others: readonly (readonly [QuantityUnitName, string, string, number])[] = [
  ['newtonMetre', 'N*m', 'N*m', 1e3], ['poundForceFoot', 'lbf*ft', 'N*m', 1e3], ['poundForceInch', 'lbf*in', 'N*m', 1e3],
  ['gram', 'g', 'mg', 1], ['kilogram', 'kg', 'mg', 1], ['ounce', 'oz', 'mg', 1], ['kilopascal', 'kPa', 'Pa', 1],
  ['bar', 'bar', 'Pa', 1], ['poundPerSquareInch', 'psi', 'Pa', 1], ['pound', 'lb', 'mg', 1],
  ['newton', 'N', 'N', 1e3], ['poundForce', 'lbf', 'N', 1e3], ['gramMillimetre', 'g*mm', 'mg*mm', 1], ['gramInch', 'g*in', 'mg*mm', 1],
  ['ounceInch', 'oz*in', 'mg*mm', 1],
]
/** Decimals typed in each unit, so that the figure is a whole number of nanometres. */
const decimals = { inch: 4, millimetre: 4, micron: 3, thousandth: 2, tenth: 1 } as const
const tenThousandths = fc.integer({ min: -999_999, max: 999_999 })

describe('a units library agrees', () => {
  it.each(lengths)('on a typed length in %s, within half a nanometre: its doubles round, ours are exact', (unit, other, factor) => {
    fc.assert(fc.property(tenThousandths, (count) => {
      const typed = new Decimal(count).div(10_000).toFixed(decimals[unit])
      const theirs = Qty(Number(typed) * factor, other).to('nm').scalar
      expect(Math.abs(parseLength(typed, unit) - theirs)).toBeLessThan(0.5)
    }))
  })
  // its pound-force rests on 9.80665 × 0.45359237 too; one base unit of room for our one rounding, and 1e-6 of theirs
  it.each(others)('on a typed figure in %s, within one base unit and a millionth', (unit, from, to, factor) => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 99_999 }), (hundredths) => {
      const typed = new Decimal(hundredths).div(100).toFixed(2)
      const theirs = Qty(Number(typed), from).to(to).scalar * factor
      expect(Math.abs(parseQuantity(typed, unit) - theirs)).toBeLessThanOrEqual(0.51 + Math.abs(theirs) * 1e-6)
    }))
  })
})

describe('a decimal library agrees to the last figure', () => {
  const typed = fc.array(tenThousandths, { minLength: 1, maxLength: 40 })
  it('on sums and differences of inches, which doubles get wrong', () => {
    fc.assert(fc.property(typed, (counts) => {
      const texts = counts.map((count) => new Decimal(count).div(10_000).toFixed(4))
      const decimal = texts.reduce((sum, text) => sum.plus(text), new Decimal(0))
      const sum = add(...texts.map((text) => parseLength(text, 'inch')))
      expect(decimal.times(25_400_000).toFixed()).toBe(String(sum))
      const first = texts[0] ?? '0'
      expect(decimal.minus(first).times(25_400_000).toFixed()).toBe(String(subtract(sum, parseLength(first, 'inch')) || 0))
    }))
    // the slip that a notebook in doubles makes
    expect(0.1 + 0.2).not.toBe(0.3)
    expect(add(parseLength('0.1', 'inch'), parseLength('0.2', 'inch'))).toBe(parseLength('0.3', 'inch'))
  })
  it('on a mean rounded half to even', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 200_000_000 }), { minLength: 1, maxLength: 24 }), (values) => {
      const sum = values.reduce((total, value) => total.plus(value), new Decimal(0))
      const mean = sum.div(values.length).toDecimalPlaces(0, Decimal.ROUND_HALF_EVEN)
      expect(sizeOf(values.map(nanometresOf)).mean).toBe(mean.toNumber())
    }))
  })
})
