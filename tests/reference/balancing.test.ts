import { describe, expect, it } from 'vitest'
import { bobweight, formatQuantity, parseQuantity, permissibleEccentricity, permissibleUnbalance } from '../../packages/domain/src/index.ts'

describe('residual unbalance', () => {
  it('2 kg at 10 000/min in G 6.3: 12 g·mm (a carbide maker’s catalogue), tolerance 0.05; exactly 12.032 and 6.016 µm', () => {
    expect(Math.abs(permissibleUnbalance(2, 6.3, 10_000) - 12)).toBeLessThan(0.05)
    expect(Math.abs(permissibleUnbalance(2, 6.3, 10_000) - 12.032)).toBeLessThan(5e-4)
    expect(Math.abs(permissibleEccentricity(6.3, 10_000) - 6.016)).toBeLessThan(5e-4)
  })

  // Computed from e = G / Ω. Tolerance 0.1 %: tables use 9549 for 30 000 / π.
  it.each([[6.3, 20, 3_000, 20.05, 401.1], [16, 20, 3_000, 50.93, 1_018.6], [16, 25, 6_000, 25.46, 636.6]])(
    'G %f, %d kg, %d/min: %f µm and %f g·mm', (grade, mass, turns, eccentricity, unbalance) => {
      expect(Math.abs(permissibleEccentricity(grade, turns) / eccentricity - 1)).toBeLessThan(1e-3)
      expect(Math.abs(permissibleUnbalance(mass, grade, turns) / unbalance - 1)).toBeLessThan(1e-3)
    },
  )
})

describe('what a balancing machine shows', () => {
  // From the ounce of 28.349 523 125 g and the inch of 25.4 mm (1959, from memory), worked out by hand: 720.077 887 375 g·mm.
  it('1 oz·in is 720.08 g·mm to the last figure shown, and 1 g·in is 25.4 g·mm exactly', () => {
    expect(parseQuantity('1 oz·in', 'gramMillimetre')).toBe(720_078)
    expect(parseQuantity('1', 'gramInch')).toBe(25_400)
    expect(formatQuantity(720_078, 'ounceInch', 3, 'half-even')).toBe('1.000')
    expect(formatQuantity(318_309, 'ounceInch', 3, 'half-even')).toBe('0.442')
  })
})

describe('bobweight', () => {
  const bare = { smallEnd: 0, piston: 0, pin: 0, rings: 0, retainers: 0 }

  it('of two rods turns 1333 g with big ends of 621.5 g and bearings of 45 g (a magazine of 2008), exactly', () => {
    const rod = { ...bare, bigEnd: 621_500, shells: 45_000 }
    expect(bobweight([rod, rod], 500, 0)).toBe(1_333_000)
  })

  it('of two equal rods at a half counts one whole reciprocating set (balancing shops’ rule for V8s), exactly', () => {
    // Pistons with pins of 639.5 g: the magazine's light set.
    const rod = { ...bare, bigEnd: 621_500, shells: 45_000, piston: 639_500 }
    expect(bobweight([rod, rod], 500, 4_000)).toBe(1_333_000 + 639_500 + 4_000)
  })
})
