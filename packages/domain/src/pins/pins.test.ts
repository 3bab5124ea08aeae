import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { heatingRise, timeLeft } from './heating.ts'
import { holdingForce, jointStress } from './interference.ts'

const steel = { modulus: 210e9, poisson: 0.3 }
const joint = { interference: 38_100, diameter: 23.5e6, outer: 36e6, inner: 14e6, hub: steel, shaft: steel }

describe('a pressed pin', () => {
  it('of one material agrees with the short form p = Eδ(do² − d²)(d² − di²) / [2d³(do² − di²)]', () => {
    const size = fc.integer({ min: 1, max: 30 })
    fc.assert(
      fc.property(
        size,
        size,
        size,
        fc.integer({ min: 1, max: 60_000 }),
        (bore, wall, hub, interference) => {
          const [inner, diameter, outer] = [bore * 1e6, (bore + wall) * 1e6, (bore + wall + hub) * 1e6]
          const { pressure } = jointStress({ ...joint, inner, diameter, outer, interference })
          const short =
            (steel.modulus * interference * (outer ** 2 - diameter ** 2) * (diameter ** 2 - inner ** 2)) /
            (2 * diameter ** 3 * (outer ** 2 - inner ** 2))
          expect(Math.abs(pressure / short - 1)).toBeLessThan(1e-9)
        },
      ),
    )
  })

  it('presses in proportion to its interference, and a hollow pin less than a solid one', () => {
    const { pressure } = jointStress(joint)
    expect(jointStress({ ...joint, interference: 76_200 }).pressure).toBeCloseTo(2 * pressure, 3)
    expect(jointStress({ ...joint, inner: 0 }).pressure).toBeGreaterThan(pressure)
  })

  it.each([
    ['a pin larger than its rod', () => jointStress({ ...joint, outer: 20e6 })],
    ['a bore larger than its pin', () => jointStress({ ...joint, inner: 24e6 })],
    ['no interference', () => jointStress({ ...joint, interference: 0 })],
    [
      'a material that does not exist',
      () => jointStress({ ...joint, hub: { modulus: 210e9, poisson: 0.7 } }),
    ],
    ['friction over one', () => holdingForce(1, 1, 1, 1.5)],
  ])('is refused for %s', (_, compute) => {
    expect(compute).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
  })
})

describe('a heated rod', () => {
  it('must be warmer the closer the fit and the smaller the pin', () => {
    expect(heatingRise(23.5, 0.038, 0.05, 12e-6)).toBeGreaterThan(heatingRise(23.5, 0.02, 0.05, 12e-6))
    expect(heatingRise(20, 0.038, 0.05, 12e-6)).toBeGreaterThan(heatingRise(23.5, 0.038, 0.05, 12e-6))
  })

  it('leaves one time constant until its excess over the air has fallen to 1/e', () => {
    expect(timeLeft(90, 320, 20 + 300 / Math.E, 20)).toBeCloseTo(90, 9)
    expect(timeLeft(90, 200, 200, 20)).toBe(0)
  })

  it('is refused when it would have to get warmer by standing', () => {
    expect(() => timeLeft(90, 100, 120, 20)).toThrow(
      expect.objectContaining({ code: 'value-out-of-range' }),
    )
    expect(() => timeLeft(90, 100, 20, 20)).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
  })
})
