import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { round } from '../exact/rounding.ts'
import { comparisonError, sizeAtReference, sizeAtTemperature } from './expansion.ts'
import { materials } from './material.ts'

const temperature = fc.integer({ min: -40_000, max: 250_000 })
const expansion = fc.constantFrom(...Object.values(materials).map((material) => material.expansion))

describe('correction to 20 °C', () => {
  it('undone is the identity, to the nanometre', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 1_000_000_000 }), temperature, expansion, (size, at, alpha) => {
      expect(round(sizeAtTemperature(sizeAtReference(size, at, alpha), at, alpha), 'half-even')).toBe(size)
    }))
  })
  it('changes nothing at 20 °C, and makes a warm reading smaller', () => {
    expect(sizeAtReference(101_600_000, 20_000, 11_400)).toBe(101_600_000)
    expect(sizeAtReference(101_600_000, 30_000, 11_400)).toBeLessThan(101_600_000)
  })
  it('of part and gauge of one material at one temperature is nothing', () => {
    fc.assert(fc.property(temperature, expansion, (at, alpha) => {
      const body = { temperature: at, expansion: alpha }
      expect(comparisonError(100_000_000, body, body)).toBe(0)
    }))
  })
  it('refuses temperatures and expansions that no part has', () => {
    const refused = expect.objectContaining({ code: 'value-out-of-range' })
    expect(() => sizeAtReference(1, 400_000, 11_400)).toThrow(refused)
    expect(() => sizeAtReference(1, Number.NaN, 11_400)).toThrow(refused)
    expect(() => sizeAtReference(1, 20_000, -1)).toThrow(refused)
  })
})
