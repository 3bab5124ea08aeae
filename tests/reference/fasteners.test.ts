import { describe, expect, it } from 'vitest'
import {
  boltStrength, preloadAtShare, preloadByStretch, preloadByTorque, proofLoad, stressArea, stretchForPreload, torqueForPreload,
} from '../../packages/domain/src/index.ts'

const inch = 25_400_000
const squareInch = 645.16
const unified = (diameter: number, perInch: number) => stressArea({ family: 'unified', diameter: diameter * inch, pitch: inch / perInch })
const metric = (diameter: number, pitch: number) => stressArea({ family: 'metric', diameter: diameter * 1e6, pitch: pitch * 1e6 })

describe('stress area', () => {
  // Tables of UNF and UNC threads. Tolerance 0.0001 in²: tables round, and 5/16-24 stands as 0.0580 or 0.0581.
  it.each([
    ['1/4-28', 0.25, 28, 0.036_4], ['5/16-24', 0.3125, 24, 0.058], ['3/8-24', 0.375, 24, 0.087_8],
    ['7/16-20', 0.4375, 20, 0.118_7], ['1/2-20', 0.5, 20, 0.159_9], ['3/8-16', 0.375, 16, 0.077_5],
  ])('of %s: %f × %d is %f in²', (_, diameter, perInch, area) => {
    expect(Math.abs(unified(diameter, perInch) / squareInch - area)).toBeLessThan(1e-4)
  })

  // Tables of ISO 898-1 areas. Tolerance 0.05 mm² to M12 and 0.5 mm² above: three figures are printed.
  it.each([
    ['M6', 6, 1, 20.1, 0.05], ['M8', 8, 1.25, 36.6, 0.05], ['M10', 10, 1.5, 58, 0.05], ['M12', 12, 1.75, 84.3, 0.05],
    ['M16', 16, 2, 157, 0.5],
  ])('of %s: %d × %f is %f mm², tolerance %f', (_, diameter, pitch, area, tolerance) => {
    expect(Math.abs(metric(diameter, pitch) - area)).toBeLessThan(tolerance)
  })

  it.each([['M11×1.5', 11, 1.5, 72.27], ['M10×1.25', 10, 1.25, 61.2], ['M12×1.5', 12, 1.5, 88.13]])(
    'of %s: %d × %f is %f mm² (computed), tolerance 0.005', (_, diameter, pitch, area) => {
      expect(Math.abs(metric(diameter, pitch) - area)).toBeLessThan(0.005_1)
    },
  )
})

describe('proof load', () => {
  // Table that quotes ISO 898-1, in newtons. Tolerance 100 N: three figures are printed.
  it.each([
    ['8.8', 8, 1.25, 21_200], ['10.9', 8, 1.25, 30_400], ['12.9', 8, 1.25, 35_500],
    ['8.8', 10, 1.5, 33_700], ['10.9', 10, 1.5, 48_100], ['12.9', 10, 1.5, 56_300],
    ['8.8', 12, 1.75, 48_900], ['10.9', 12, 1.75, 70_000], ['12.9', 12, 1.75, 81_800],
  ])('of class %s, M%d × %f is %d N', (grade, diameter, pitch, load) => {
    expect(Math.abs(proofLoad(metric(diameter, pitch), boltStrength(grade, diameter * 1e6)) - load)).toBeLessThan(100)
  })

  // SAE J429 as summarised by a bolt maker: psi. Tolerance 1 psi: the unit's own rounding.
  it.each([['SAE 1', 0.5, 33_000], ['SAE 2', 0.5, 55_000], ['SAE 5', 1, 85_000], ['SAE 5', 1.25, 74_000], ['SAE 8', 0.5, 120_000]])(
    'of %s, %f in rests on %d psi', (grade, diameter, psi) => {
      expect(Math.abs((boltStrength(grade, diameter * inch).proof * squareInch) / 4.448_221_615_260_5 - psi)).toBeLessThan(1)
    },
  )
})

describe('preload', () => {
  it('3/8-24, 0.75 of 85 000 psi, K 0.18: 5597 lbf and 377.8 lbf·in (Shigley, solutions to chapter 8), tolerance 0.5 lbf·in', () => {
    const poundForce = 4.448_221_615_260_5
    const preload = preloadAtShare(unified(0.375, 24), boltStrength('SAE 5', 0.375 * inch), 0.75) / poundForce
    expect(Math.abs(preload - 5_597)).toBeLessThan(5)
    expect(Math.abs(torqueForPreload(preload, 0.375, 0.18) - 378)).toBeLessThan(0.5)
    expect(preloadByTorque(torqueForPreload(preload, 0.375, 0.18), 0.375, 0.18)).toBeCloseTo(preload, 6)
  })

  it('10 000 lbf over 1.500 in of 0.1187 in² at 30e6 psi stretch 0.00421 in (computed), tolerance 5e-6 in', () => {
    const bolt = [{ length: 1.5, area: 0.118_7 }]
    expect(Math.abs(stretchForPreload(10_000, bolt, 30e6) - 0.004_21)).toBeLessThan(5e-6)
    expect(preloadByStretch(stretchForPreload(10_000, bolt, 30e6), bolt, 30e6)).toBeCloseTo(10_000, 6)
  })
})
