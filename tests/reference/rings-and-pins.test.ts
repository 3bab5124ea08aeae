import { describe, expect, it } from 'vitest'
import { gapClosing, gapGrowth, heatingRise, holdingForce, holdingTorque, jointStress } from '../../packages/domain/src/index.ts'

describe('a ring’s end gap', () => {
  it('grows 0.003 in for each 0.001 in of bore (US Army TM 5-3805-261-34), tolerance 0.0005: its last figure', () => {
    expect(Math.abs(gapGrowth(0.001) - 0.003)).toBeLessThan(0.000_5)
    expect(Math.abs(gapGrowth(0.001) - 0.003_141_6)).toBeLessThan(1e-7)
  })

  it('closes 0.616 in on a 9.625 in polymer ring, gap 0.136, 230 °F at 8.9e-5 (a physics forum), tolerance 5e-4', () => {
    const closed = gapClosing(9.625, 0.136, { expansion: 8.9e-5, rise: 230 })
    expect(Math.abs(closed - 0.616)).toBeLessThan(5e-4)
    expect(Math.abs(closed - 0.616_2)).toBeLessThan(5.1e-5)
  })

  it('closes 0.01583 in on a 4 in iron ring by 200 °F (computed with 6.3e-6, no gap), tolerance 1e-5 in', () => {
    expect(Math.abs(gapClosing(4, 0, { expansion: 6.3e-6, rise: 200 }) - 0.015_83)).toBeLessThan(1e-5)
  })

  it('closes 0.4003 mm on 101.6 mm by 110 °C (computed with 11.4e-6, no gap), tolerance 1e-4 mm', () => {
    expect(Math.abs(gapClosing(101.6, 0, { expansion: 11.4e-6, rise: 110 }) - 0.400_3)).toBeLessThan(1e-4)
  })
})

// Computed from Shigley's equations 7-39 to 7-47: steel hub 50/80 × 40 mm on a solid steel shaft, 0.04 mm on diameter.
describe('a pressed joint', () => {
  const steel = { modulus: 210e9, poisson: 0.3 }
  const stress = jointStress({ interference: 40_000, diameter: 50e6, outer: 80e6, inner: 0, hub: steel, shaft: steel })
  const within = (value: number, published: number) => expect(Math.abs(value / published - 1)).toBeLessThan(1e-3)

  it('presses with 51.19 MPa, tolerance 0.1 %', () => within(stress.pressure, 51.19e6))
  it('stretches its hub with 116.8 MPa, tolerance 0.1 %', () => within(stress.hubHoop, 116.8e6))
  it('presses a solid shaft alike all over: hoop is the pressure', () => within(-stress.shaftHoop, stress.pressure))
  it('holds 38 594 N at a friction of 0.12, tolerance 0.1 %', () => {
    within(holdingForce(50e6, 40e6, stress.pressure, 0.12), 38_594)
  })
  it('holds 964.9 N·m, tolerance 0.1 %', () => within(holdingTorque(50e6, 40e6, stress.pressure, 0.12), 964.9))
})

describe('shrinking on', () => {
  it('100 mm, 0.060 mm interference and as much room: 102.6 °C above the shaft (computed with 11.7e-6), tolerance 0.05 °C', () => {
    expect(Math.abs(heatingRise(100, 0.06, 0.06, 11.7e-6) - 102.6)).toBeLessThan(0.05)
  })
})
