import { describe, expect, it } from 'vitest'
import {
  compressionRatio, displacement, effectiveRatio, clearanceForRatio, fastestAngle, meanPistonSpeed, pistonDrop, pistonSpeed,
  strokeAfterClosing, sweptVolume,
} from '../../packages/domain/src/index.ts'

const inch = 25_400_000
const cubicInch = 16_387.064

// Published with the article "Static vs dynamic compression ratio": stroke 3.48 in, a rod of 5.7 in.
const published = { stroke: 3.48, rod: 5.7 }

describe('slider-crank', () => {
  it('intake closing 70° after bottom centre: the piston has risen 0.9053 in (article), tolerance 5e-5 in: its last figure', () => {
    expect(Math.abs(published.stroke - strokeAfterClosing(published, 70_000) - 0.9053)).toBeLessThan(5e-5)
  })

  it.each([[30_000, 0.299_9], [90_000, 2.012_07], [150_000, 3.313_67]])(
    'the same geometry at %d thousandths of a degree: %f in (computed from the closed formula), tolerance 5e-6 in: rounding',
    (angle, drop) => {
      expect(Math.abs(pistonDrop(published, angle) - drop)).toBeLessThan(5.1e-6)
    },
  )

  it('textbook square 3.0 L V6 at 20°: x 0.3246 cm, speed ratio 0.6685 of the mean (Pulkrabek ex. 2-1, inputs from memory), tolerance 2e-4', () => {
    const crank = { stroke: 8.6, rod: 16.6 }
    expect(Math.abs(pistonDrop(crank, 20_000) - 0.324_6)).toBeLessThan(2e-4)
    // Mean speed for each radian of crank is stroke / π.
    expect(Math.abs((pistonSpeed(crank, 20_000) * Math.PI) / crank.stroke - 0.668_5)).toBeLessThan(2e-4)
  })

  it('the same engine’s mean speed at 3600/min is 10.32 m/s, tolerance 0.005: its last figure', () => {
    expect(Math.abs(meanPistonSpeed(0.086_03, 3_600) - 10.32)).toBeLessThan(0.005)
  })

  it('r 0.1, l 0.2: exactly fastest at 67.70° and x 0.0847 (computed; two terms of the series give 68.53°), tolerance 0.01°', () => {
    const crank = { stroke: 0.2, rod: 0.2 }
    expect(Math.abs(fastestAngle(crank) - 67_700)).toBeLessThan(10)
    expect(Math.abs(pistonDrop(crank, fastestAngle(crank)) - 0.084_7)).toBeLessThan(5e-5)
  })
})

describe('displacement', () => {
  // Encyclopaedia article on an American small V8 family: cubic inches as sold, rounded or cut to whole units.
  it.each([
    [3.75, 3, 265, 265.07], [3.875, 3, 283, 283.04], [4, 3, 302, 301.59], [4, 3.25, 327, 326.73], [4, 3.48, 350, 349.85],
    [4.125, 3.75, 400, 400.92],
  ])('of eight cylinders %f × %f in is sold as %d, tolerance 1 in³; computed %f, tolerance 0.01 in³', (bore, stroke, sold, computed) => {
    const found = displacement({ bore: bore * inch, stroke: stroke * inch, cylinders: 8 }) / cubicInch
    expect(Math.abs(found - sold)).toBeLessThan(1)
    expect(Math.abs(found - computed)).toBeLessThan(0.01)
  })

  it('4.000 × 3.52 in × 8 is 353.86 in³ (an engine-arithmetic page), tolerance 0.015: it cut its last figure', () => {
    expect(Math.abs(displacement({ bore: 4 * inch, stroke: 3.52 * inch, cylinders: 8 }) / cubicInch - 353.86)).toBeLessThan(0.015)
  })

  it('four cylinders of 86 × 86 mm are 1998 cm³ (several two-litre engines, from memory), tolerance 0.5 cm³', () => {
    expect(Math.abs(displacement({ bore: 86e6, stroke: 86e6, cylinders: 4 }) / 1_000 - 1_998)).toBeLessThan(0.5)
  })
})

describe('compression ratio', () => {
  it('bore 101.6, stroke 88.9 mm, 60 cm³: 13.0123 with the whole of π; an article that takes 3.14 prints 13.006', () => {
    const swept = sweptVolume(101.6e6, 88.9e6)
    expect(Math.abs(swept / 1_000 - 720.741)).toBeLessThan(5e-4)
    const ratio = compressionRatio(swept, 60_000)
    expect(Math.abs(ratio - 13.012_3)).toBeLessThan(5.1e-5)
    expect(Math.abs(ratio - 13.006)).toBeGreaterThan(0.005)
  })

  it('static 10.0 with intake closing 70° after bottom centre is 7.659 in effect (computed), tolerance 5e-4', () => {
    const crank = { stroke: 3.48 * inch, rod: 5.7 * inch }
    const swept = sweptVolume(4 * inch, crank.stroke)
    expect(Math.abs(effectiveRatio(crank, swept, clearanceForRatio(swept, 10), 70_000) - 7.659)).toBeLessThan(5e-4)
    expect(Math.abs((swept * strokeAfterClosing(crank, 70_000)) / crank.stroke / cubicInch - 32.354)).toBeLessThan(5e-4)
  })

  it('the textbook V6 at 9.5 leaves 58.82 cm³ (Pulkrabek ex. 2-1, inputs from memory), tolerance 0.01 cm³', () => {
    expect(Math.abs(clearanceForRatio(500, 9.5) - 58.82)).toBeLessThan(0.01)
  })
})
