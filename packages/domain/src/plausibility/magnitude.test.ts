import { describe, expect, it } from 'vitest'
import { checkMagnitude } from './magnitude.ts'

describe('a size far from its nominal', () => {
  const nominal = 101_600_000
  it('is stopped when inches and millimetres were mixed up', () => {
    expect(checkMagnitude(Math.floor(nominal / 25.4), nominal)).toMatchObject({ outcome: 'block', rule: 'unit' })
    expect(checkMagnitude(nominal * 25.4, nominal)?.sentence).toContain('25.4 times larger')
  })
  it('is stopped when the decimal point is displaced by one, two or three figures, either way', () => {
    for (const factor of [10, 100, 1_000]) {
      expect(checkMagnitude(nominal * factor, nominal)).toMatchObject({ outcome: 'block', rule: 'decimal-place' })
      expect(checkMagnitude(nominal / factor, nominal)?.sentence).toContain(`about ${factor} times smaller`)
    }
  })
  it('passes when it is merely oversize or worn, and where no nominal can be named', () => {
    expect(checkMagnitude(nominal + 1_524_000, nominal)).toBeNull()
    expect(checkMagnitude(nominal, null)).toBeNull()
  })
  it('takes the numbers of the shop', () => {
    expect(checkMagnitude(2 * nominal, nominal, { unitRatio: [1.9, 2.1], decimalRatios: [] })?.rule).toBe('unit')
  })
})
