import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { clearanceForRatio, compressionRatio, effectiveRatio } from './ratio.ts'
import { clearanceVolume, displacement, sweptVolume } from './volumes.ts'

const inch = 25_400_000
const parts = {
  bore: 4 * inch,
  chamber: 64_000,
  gasket: { diameter: 4.1 * inch, thickness: 0.04 * inch },
  deckClearance: 0.02 * inch,
  dish: 5_000,
  crevice: { depth: 0.25 * inch, landDiameter: 3.97 * inch },
}

describe('clearance volume', () => {
  it('counts chamber, gasket, deck, dish and the crevice above the top ring', () => {
    // cm³: 64 + π/4·4.1²·0.04·16.387064 + π/4·4²·0.02·16.387064 + 5 + π/4·(4² − 3.97²)·0.25·16.387064
    expect(clearanceVolume(parts) / 1_000).toBeCloseTo(64 + 8.654037 + 4.118518 + 5 + 0.769326, 4)
  })

  it('shrinks with a dome and with a piston that stands out', () => {
    expect(clearanceVolume({ ...parts, dish: -8_000 })).toBeCloseTo(clearanceVolume(parts) - 13_000, 6)
    expect(clearanceVolume({ ...parts, deckClearance: -0.02 * inch })).toBeLessThan(clearanceVolume(parts))
  })

  it.each([
    ['a dome that fills everything', () => clearanceVolume({ ...parts, dish: -90_000 })],
    [
      'a land wider than the bore',
      () => clearanceVolume({ ...parts, crevice: { depth: 1, landDiameter: 4.1 * inch } }),
    ],
    ['no cylinders', () => displacement({ bore: 1, stroke: 1, cylinders: 0 })],
    ['no bore', () => sweptVolume(0, 1)],
    ['a ratio of one', () => clearanceForRatio(500, 1)],
    ['no clearance', () => compressionRatio(500, 0)],
  ])('is refused for %s', (_, compute) => {
    expect(compute).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
  })
})

describe('compression', () => {
  const ratio = fc.double({ min: 6, max: 20, noNaN: true })

  it('asks for the clearance that gives the ratio back', () => {
    fc.assert(
      fc.property(ratio, (wanted) => {
        expect(compressionRatio(500, clearanceForRatio(500, wanted))).toBeCloseTo(wanted, 9)
      }),
    )
  })

  it('in effect is the static one when the intake closes at bottom centre, and falls with every degree later', () => {
    const crank = { stroke: 90, rod: 145 }
    const closing = fc.integer({ min: 0, max: 120_000 })
    fc.assert(
      fc.property(ratio, closing, closing, (wanted, one, other) => {
        const clearance = clearanceForRatio(500, wanted)
        const at = (angle: number) => effectiveRatio(crank, 500, clearance, angle)
        expect(at(0)).toBeCloseTo(wanted, 9)
        expect(at(Math.max(one, other))).toBeLessThanOrEqual(at(Math.min(one, other)))
      }),
    )
  })
})
