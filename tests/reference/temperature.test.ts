import { describe, expect, it } from 'vitest'
import { comparisonError, materials, sizeAtReference, sizeAtTemperature } from '../../packages/domain/src/index.ts'

describe('expansion', () => {
  it('a 101.600 mm grey-iron bore at 24 °C reads 4.633 µm large (computed with Callister’s 11.4e-6), tolerance 0.001 µm', () => {
    const warm = sizeAtTemperature(101_600_000, 24_000, materials['grey-iron'].expansion)
    expect(Math.abs(warm - 101_600_000 - 4_633)).toBeLessThan(1)
    expect(Math.abs(sizeAtReference(warm, 24_000, materials['grey-iron'].expansion) - 101_600_000)).toBeLessThan(1e-6)
  })
  it('solid aluminium of 4 in at 30 °C is 0.0009 in larger (common practice, no source), tolerance 0.00005 in', () => {
    const growth = comparisonError(
      4, { temperature: 30_000, expansion: materials.aluminium.expansion }, { temperature: 20_000, expansion: 11_500 })
    expect(Math.abs(growth - 0.0009)).toBeLessThan(0.000_05)
  })
  it.each([
    ['steel-1020', 6.5], ['steel-1040', 6.3], ['steel-4140', 6.8], ['grey-iron', 6.3], ['ductile-iron-60-40-18', 6.2],
    ['ductile-iron-80-55-06', 5.9], ['aluminium-356', 11.9], ['bearing-bronze', 10], ['phosphor-bronze', 9.9],
    ['aluminium-bronze', 9],
  ] as const)('%s: the table’s other column, %f per °F, agrees (Callister B.6; bronzes amesweb), tolerance 0.06: each column is rounded by itself', (name, perFahrenheit) => {
    expect(Math.abs((materials[name].expansion / 1_000) * (5 / 9) - perFahrenheit)).toBeLessThan(0.06)
  })
})
