import { describe, expect, it } from 'vitest'
import {
  bobweight, boltStrength, clearanceForRatio, comparisonError, compressionRatio, displacement, fastestAngle, firingEvents,
  gapGrowth, heatingRise, holdingForce, holdingTorque, jointStress, materials, meanPistonSpeed, permissibleEccentricity,
  permissibleUnbalance, pistonAcceleration, pistonDrop, pistonSpeed, preloadAtShare, proofLoad, radialRoundness, outOfRound,
  sizeAtReference, stressArea, torqueForPreload, type EngineSpecification,
} from '../../packages/domain/src/index.ts'
import { inlineFour, v8 } from '../../packages/domain/src/testing/engines.ts'

const inch = 25_400_000
const cubicInch = 16_387.064
const poundForce = 4.448_221_615_260_5
const off = (found: number, published: number) => Math.abs(found - published)
const share = (found: number, published: number) => Math.abs(found / published - 1)

describe('slider-crank of r 50, l 200 (n = 4)', () => {
  const crank = { stroke: 100, rod: 200 }
  // By differences of x = r(1 − cos θ) + l − √(l² − r² sin² θ) in Python; tolerance half of the last figure
  it.each([[30, 8.2674, 30.4554, 49.751], [45, 17.7945, 41.7053, 35.56], [60, 29.7438, 48.8454, 18.756], [120, 79.7438, 37.7571, -31.244]])(
    'at %d°: x %f, v/ω %f, a/ω² %f (computed)', (degrees, x, v, a) => {
      expect(off(pistonDrop(crank, degrees * 1_000), x)).toBeLessThan(5.1e-5)
      expect(off(pistonSpeed(crank, degrees * 1_000), v)).toBeLessThan(5.1e-5)
      expect(off(pistonAcceleration(crank, degrees * 1_000), a)).toBeLessThan(5.1e-4)
    })
  // Textbooks' closed forms, tolerance 1e-9: arithmetic only
  it('at 90°: x = r + l − √(l² − r²), v = r, a = −r²/√(l² − r²): past half of the stroke, and slowing', () => {
    expect(off(pistonDrop(crank, 90_000), 250 - Math.sqrt(37_500))).toBeLessThan(1e-9)
    expect(off(pistonSpeed(crank, 90_000), 50)).toBeLessThan(1e-9)
    expect(off(pistonAcceleration(crank, 90_000), -2_500 / Math.sqrt(37_500))).toBeLessThan(1e-9)
  })
  it('at both centres: a = r(1 + 1/n) and −r(1 − 1/n), and no speed', () => {
    expect(off(pistonAcceleration(crank, 0), 62.5)).toBeLessThan(1e-9)
    expect(off(pistonAcceleration(crank, 180_000), -37.5)).toBeLessThan(1e-9)
    expect(off(pistonSpeed(crank, 180_000), 0)).toBeLessThan(1e-9)
  })
  it('two terms of the series, r(cos θ + cos 2θ/n), are within 1.5 % of r: textbooks’ own error', () => {
    for (let degrees = 0; degrees <= 180; degrees += 15) {
      const angle = (degrees * Math.PI) / 180
      const series = 50 * (Math.cos(angle) + Math.cos(2 * angle) / 4)
      expect(off(pistonAcceleration(crank, degrees * 1_000), series)).toBeLessThan(0.015 * 50)
    }
  })
  it.each([[3, 73.18], [3.5, 75.14], [4, 76.72], [5, 79.1]])(
    'with l = %f r the piston is fastest at %f° (computed by search), tolerance 0.006°', (ratio, degrees) => {
      expect(off(fastestAngle({ stroke: 2, rod: ratio }), degrees * 1_000)).toBeLessThan(6)
    })
  it('mean speed: 100 mm at 6000/min is 20 m/s, 3.48 in at 6000/min 3480 ft/min (definition), tolerance 1e-9', () => {
    expect(off(meanPistonSpeed(0.1, 6_000), 20)).toBeLessThan(1e-9)
    expect(off(meanPistonSpeed(3.48 / 12, 6_000) * 60, 3_480)).toBeLessThan(1e-9)
  })
})

describe('displacement and ratio', () => {
  it.each([[4.25, 3.76, 8, 427], [4.25, 4, 8, 454]])(
    '%f × %f in, %d cylinders, is sold as %d in³ (from memory), tolerance 0.5: whole inches are quoted', (bore, stroke, cylinders, sold) => {
      expect(off(displacement({ bore: bore * inch, stroke: stroke * inch, cylinders }) / cubicInch, sold)).toBeLessThan(0.5)
    })
  it.each([[79.5, 80.5, 4, 1_598], [84, 90, 4, 1_995], [86, 94.6, 4, 2_198], [95.5, 81.4, 6, 3_498], [68, 68.8, 4, 999]])(
    '%f × %f mm, %d cylinders, is %d cm³ (sizes in common use, from memory), tolerance 0.5', (bore, stroke, cylinders, volume) => {
      expect(off(displacement({ bore: bore * 1e6, stroke: stroke * 1e6, cylinders }) / 1_000, volume)).toBeLessThan(0.51)
    })
  it('clearance of 20 % of displacement is 6 (a textbook’s problem 9.9 in the FOSSEE Scilab companions, 2417), tolerance 1e-12', () => {
    expect(off(compressionRatio(1, 0.2), 6)).toBeLessThan(1e-12)
    expect(off(clearanceForRatio(1, 6), 0.2)).toBeLessThan(1e-12)
  })
  it('60 × 100 mm over 60 cm³ is 5.712 (inputs of example 17.17 in the FOSSEE Scilab companions, 443; computed), tolerance 5e-4', () => {
    const swept = displacement({ bore: 60e6, stroke: 100e6, cylinders: 1 })
    expect(off(compressionRatio(swept, 60_000), 5.712_4)).toBeLessThan(5e-4)
  })
})

describe('a pressed joint of one material', () => {
  // Shigley's equation for one modulus, from memory: p = E δ / 2d³ · (do² − d²)(d² − di²)/(do² − di²)
  it('150 mm, 100 inside, 300 outside, 0.05 mm, 207 GPa: 16.172, 26.953 and −42.047 MPa (computed), tolerance 0.01 %', () => {
    const steel = { modulus: 207e9, poisson: 0.3 }
    const stress = jointStress({ interference: 50_000, diameter: 150e6, outer: 300e6, inner: 100e6, hub: steel, shaft: steel })
    const byOneModulus = ((207e9 * 0.05) / (2 * 150 ** 3)) * (((300 ** 2 - 150 ** 2) * (150 ** 2 - 100 ** 2)) / (300 ** 2 - 100 ** 2))
    expect(share(stress.pressure, byOneModulus)).toBeLessThan(1e-12)
    expect(share(stress.pressure, 16.172e6)).toBeLessThan(1e-4)
    expect(share(stress.hubHoop, 26.953e6)).toBeLessThan(1e-4)
    expect(share(stress.shaftHoop, -42.047e6)).toBeLessThan(1e-4)
  })
  it('1.5 in solid in 3 in, 0.001 in, 30 Mpsi: 7500 psi, hoop 12 500 and −7500 psi (computed), tolerance 1e-9', () => {
    const steel = { modulus: 30e6, poisson: 0.292 }
    const stress = jointStress({ interference: 0.001, diameter: 1.5, outer: 3, inner: 0, hub: steel, shaft: steel })
    expect(share(stress.pressure, 7_500)).toBeLessThan(1e-9)
    expect(share(stress.hubHoop, 12_500)).toBeLessThan(1e-9)
    expect(share(stress.shaftHoop, -7_500)).toBeLessThan(1e-9)
  })
  it('steel hub 80/120 on an iron sleeve 40 inside, 0.06 mm: 26.290 MPa (computed from Lamé), tolerance 0.01 %', () => {
    const stress = jointStress({
      interference: 60_000, diameter: 80e6, outer: 120e6, inner: 40e6,
      hub: { modulus: 207e9, poisson: 0.292 }, shaft: { modulus: 100e9, poisson: 0.211 },
    })
    expect(share(stress.pressure, 26.290e6)).toBeLessThan(1e-4)
    expect(share(stress.hubHoop, 68.355e6)).toBeLessThan(1e-4)
    expect(share(stress.shaftHoop, -43.817e6)).toBeLessThan(1e-4)
  })
  it('100 N/mm² over 20 × 10 mm at 0.1 hold 6283.2 N and 62.832 N·m (computed), tolerance 0.1 N', () => {
    expect(off(holdingForce(20e6, 10e6, 100e6, 0.1), 6_283.2)).toBeLessThan(0.1)
    expect(off(holdingTorque(20e6, 10e6, 100e6, 0.1), 62.832)).toBeLessThan(1e-3)
  })
})

describe('threads (ISO 898-1 and ASME B1.1 as textbooks’ tables print them, from memory)', () => {
  it.each([
    ['M5', 5, 0.8, 14.2], ['M14', 14, 2, 115], ['M18', 18, 2.5, 192], ['M20', 20, 2.5, 245], ['M24', 24, 3, 353], ['M30', 30, 3.5, 561],
    ['M36', 36, 4, 817], ['M8×1', 8, 1, 39.2], ['M12×1.25', 12, 1.25, 92.1], ['M16×1.5', 16, 1.5, 167],
  ])('%s, %f × %f, has %f mm², tolerance half of the third figure', (_, diameter, pitch, area) => {
    const found = stressArea({ family: 'metric', diameter: diameter * 1e6, pitch: pitch * 1e6 })
    expect(off(found, area)).toBeLessThanOrEqual(area >= 100 ? 0.52 : 0.052)
  })
  it.each([
    ['1/4-20', 0.25, 20, 0.0318], ['5/16-18', 0.3125, 18, 0.0524], ['7/16-14', 0.4375, 14, 0.1063], ['1/2-13', 0.5, 13, 0.1419],
    ['9/16-12', 0.5625, 12, 0.182], ['5/8-11', 0.625, 11, 0.226], ['3/4-10', 0.75, 10, 0.334], ['1-8', 1, 8, 0.606],
    ['9/16-18', 0.5625, 18, 0.203], ['5/8-18', 0.625, 18, 0.256], ['3/4-16', 0.75, 16, 0.373], ['1-12', 1, 12, 0.663],
  ])('%s: %f × %d has %f in², tolerance one of the last figure', (_, diameter, perInch, area) => {
    const found = stressArea({ family: 'unified', diameter: diameter * inch, pitch: inch / perInch }) / 645.16
    expect(off(found, area)).toBeLessThan(area < 0.18 ? 1e-4 : 1e-3)
  })
  // newtons, tolerance 0.5 %: the table multiplies areas of three figures and rounds to three
  it.each([
    ['4.6', 10, 1.5, 13_000], ['4.8', 8, 1.25, 11_400], ['5.8', 12, 1.75, 32_000], ['8.8', 16, 2, 91_000], ['8.8', 20, 2.5, 147_000],
    ['9.8', 10, 1.5, 37_700], ['10.9', 16, 2, 130_000], ['12.9', 6, 1, 19_500],
  ])('class %s, M%d × %f bears %d N', (grade, diameter, pitch, load) => {
    const area = stressArea({ family: 'metric', diameter: diameter * 1e6, pitch: pitch * 1e6 })
    expect(share(proofLoad(area, boltStrength(grade, diameter * 1e6)), load)).toBeLessThan(0.005)
  })
  it.each([['SAE 2', 1, 33, 36, 60], ['SAE 4', 0.5, 65, 100, 115], ['SAE 5.2', 1, 85, 92, 120], ['SAE 7', 1, 105, 115, 133], ['SAE 8.2', 0.5, 120, 130, 150]])(
    '%s at %f in: proof %d, yield %d, tensile %d thousand psi (SAE J429, from memory), tolerance 1e-9', (grade, size, proof, yields, tensile) => {
      const psi = 645.16 / poundForce
      const found = boltStrength(grade, size * inch)
      expect([found.proof, found.yield, found.tensile].map((each) => Number(((each * psi) / 1_000).toFixed(9)))).toEqual([proof, yields, tensile])
    })
  it('M10 8.8 at 0.75 of proof, K 0.2: 25.2 kN and 50 N·m (computed), tolerance 0.1 kN and 0.5 N·m', () => {
    const preload = preloadAtShare(stressArea({ family: 'metric', diameter: 10e6, pitch: 1.5e6 }), boltStrength('8.8', 10e6), 0.75)
    expect(off(preload / 1_000, 25.2)).toBeLessThan(0.1)
    expect(off(torqueForPreload(preload, 0.01, 0.2), 50)).toBeLessThan(0.5)
  })
  it('1/2-13 SAE 5 at 0.75 of proof, K 0.2: 9046 lbf and 75 lbf·ft (computed), tolerance 5 lbf and 0.5 lbf·ft', () => {
    const area = stressArea({ family: 'unified', diameter: 0.5 * inch, pitch: inch / 13 })
    const preload = preloadAtShare(area, boltStrength('SAE 5', 0.5 * inch), 0.75) / poundForce
    expect(off(preload, 9_046)).toBeLessThan(5)
    expect(off(torqueForPreload(preload, 0.5 / 12, 0.2), 75)).toBeLessThan(0.5)
  })
})

describe('balance quality (ISO 21940-11, chart and example from memory)', () => {
  it.each([[6.3, 3_000, 20], [2.5, 3_000, 8], [1, 3_000, 3.2], [16, 1_500, 102], [2.5, 1_500, 16], [40, 6_000, 64], [0.4, 3_000, 1.27], [6.3, 1_500, 40]])(
    'G %f at %d/min leaves %f g·mm/kg, tolerance 1 %: the chart is read to two figures', (grade, turns, eccentricity) => {
      expect(share(permissibleEccentricity(grade, turns), eccentricity)).toBeLessThan(0.01)
    })
  it('a rotor of 3600 kg, G 2.5 at 3000/min, is allowed 28.6 × 10³ g·mm, tolerance 0.05 × 10³', () => {
    expect(off(permissibleUnbalance(3_600, 2.5, 3_000) / 1_000, 28.6)).toBeLessThan(0.051)
  })
  it('a pin of two rods: 2 × (430 + 42) + 4 + ½ × 2 × (170 + 500 + 140 + 55 + 3) = 1816 g (invented masses), tolerance 0', () => {
    const rod = { bigEnd: 430_000, shells: 42_000, smallEnd: 170_000, piston: 500_000, pin: 140_000, rings: 55_000, retainers: 3_000 }
    expect(bobweight([rod, rod], 500, 4_000)).toBe(1_816_000)
    expect(bobweight([rod, rod], 520, 4_000)).toBe(1_816_000 + 0.02 * 2 * 868_000)
  })
})

describe('temperature, rings and form', () => {
  it.each([[1_000, 21, 11.5], [100, 23, 3.45], [25.4, 30, 2.921]])(
    'steel of %f mm at %f °C against a gauge at 20 °C reads %f µm large (ISO 1, 11.5e-6; computed), tolerance 1e-6', (length, degrees, large) => {
      const steel = materials['gauge-steel'].expansion
      const error = comparisonError(length * 1_000, { temperature: degrees * 1_000, expansion: steel }, { temperature: 20_000, expansion: steel })
      expect(off(error, large)).toBeLessThan(1e-6)
    })
  it('a rail of 30 m at 12e-6 grows 14.4 mm over 40 °C (schoolbook, from memory), tolerance 1e-9', () => {
    const rail = { temperature: 60_000, expansion: 12_000 }
    expect(off(comparisonError(30_000, rail, { ...rail, temperature: 20_000 }), 14.4)).toBeLessThan(1e-9)
  })
  it('a steel metre bar at 0 °C is 0.99977 m of what it is at 20 °C, 68 °F (computed), tolerance 1e-6', () => {
    expect(off(1 / sizeAtReference(1, 0, 11_500), 0.999_77)).toBeLessThan(1e-6)
  })
  it('50 mm, 0.05 mm interference and 0.025 room need 128.2 °C more (computed with 11.7e-6), tolerance 0.05', () => {
    expect(off(heatingRise(50, 0.05, 0.025, 11.7e-6), 128.2)).toBeLessThan(0.05)
  })
  it.each([[0.005, 0.0157], [0.01, 0.0314], [0.03, 0.0942], [0.1, 0.3142]])(
    'a bore %f larger opens the gap %f (π times; computed), tolerance half of the last figure', (bore, gap) => {
      expect(off(gapGrowth(bore), gap)).toBeLessThan(5.1e-5)
    })
  it('a centre that is off by 0.02 is no roundness error; five lobes of ± 0.003 are 0.006 on radius and none on diameter', () => {
    const radius = (degree: number, lobes: number) => 40 + (lobes === 0 ? 0.02 : 0.003) * Math.cos((Math.max(1, lobes) * degree * Math.PI) / 180)
    const all = (lobes: number) => Array.from({ length: 360 }, (_, degree) => radius(degree, lobes))
    expect(radialRoundness(all(0))).toBeLessThan(1e-12)
    expect(off(radialRoundness(all(5)), 0.006)).toBeLessThan(1e-9)
    const diameters = [0, 90].map((degree) => ({ station: 'top', axis: String(degree), value: radius(degree, 5) + radius(degree + 180, 5) }))
    expect(off(outOfRound(diameters)?.value ?? Number.NaN, 0)).toBeLessThan(1e-12)
  })
})

describe('firing orders in common use (from memory), crankpins in degrees, tolerance 0', () => {
  const inline = (cylinders: number): EngineSpecification => ({
    ...inlineFour, cylinders, rodJournals: { ...inlineFour.rodJournals, count: cylinders }, mains: { ...inlineFour.mains, count: cylinders + 1 },
  })
  const pins = (engine: EngineSpecification, order: readonly number[]) => {
    const events = firingEvents(engine, order)
    return order.map((_, index) => (events.find(({ cylinder }) => cylinder === index + 1)?.pinAngle ?? Number.NaN) / 1_000)
  }
  it.each([
    ['inline three 1-3-2', 3, [1, 3, 2], [0, 120, 240]], ['inline four 1-3-4-2', 4, [1, 3, 4, 2], [0, 180, 180, 0]],
    ['inline four 1-2-4-3', 4, [1, 2, 4, 3], [0, 180, 180, 0]],
    ['inline five 1-2-4-5-3', 5, [1, 2, 4, 5, 3], [0, 144, 216, 288, 72]],
    ['inline six 1-5-3-6-2-4', 6, [1, 5, 3, 6, 2, 4], [0, 120, 240, 240, 120, 0]],
  ])('%s', (_, cylinders, order, expected) => expect(pins(inline(cylinders), order)).toEqual(expected))
  it('a crossed 90° V8 numbered in turn, 1-8-4-3-6-5-7-2: pins of 1 and 2, 3 and 4, 5 and 6, 7 and 8 at four quarters', () => {
    const engine: EngineSpecification = { ...v8, numbering: 'alternating', firstBank: 'viewer-right', leadingBank: 'viewer-right' }
    const found = pins(engine, [1, 8, 4, 3, 6, 5, 7, 2])
    expect([0, 2, 4, 6].map((index) => found[index])).toEqual([1, 3, 5, 7].map((index) => found[index]))
    expect([0, 2, 4, 6].map((index) => found[index] ?? 0).sort((one, other) => one - other)).toEqual([0, 90, 180, 270])
    expect(Math.abs((found[0] ?? 0) - (found[6] ?? 0))).toBe(180)
  })
})
