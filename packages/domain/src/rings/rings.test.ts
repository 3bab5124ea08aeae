import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { clockingFaults, starterClocking } from './clocking.ts'
import { gapClosing, gapGrowth } from './gap-change.ts'

describe('a ring gap', () => {
  it('grows and shrinks alike', () => {
    expect(gapGrowth(-0.001)).toBe(-gapGrowth(0.001))
  })

  it('keeps its width nearly when ring and bore warm alike', () => {
    const warm = { expansion: 11.4e-6, rise: 100 }
    // What is left is the gap's own growth with the material: −g·α·ΔT.
    expect(gapClosing(100, 0.4, warm, warm)).toBeCloseTo(-0.4 * 11.4e-4, 12)
  })

  it.each([
    ['a gap wider than the ring', () => gapClosing(4, 20, { expansion: 1e-6, rise: 1 })],
    ['a ring that cools', () => gapClosing(4, 0.1, { expansion: 1e-6, rise: -1 })],
    ['no diameter', () => gapClosing(0, 0, { expansion: 1e-6, rise: 1 })],
    ['a growth that is no number', () => gapGrowth(Number.NaN)],
  ])('is refused for %s', (_, compute) => {
    expect(compute).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
  })
})

describe('clocking', () => {
  it('of the starter has no fault, on either thrust side, with and without a support rail', () => {
    for (const hour of [3, 9] as const) {
      for (const rail of [true, false]) {
        expect(clockingFaults(starterClocking(hour, rail), hour)).toEqual([])
      }
    }
  })

  it('has no gap farther from the major thrust than the expander’s', () => {
    for (const hour of [3, 9] as const) {
      const thrust = hour === 3 ? 90_000 : 270_000
      const away = (angle: number) => 180_000 - Math.abs(180_000 - Math.abs(angle - thrust))
      const clocking = starterClocking(hour, false)
      expect(away(clocking.expander ?? thrust)).toBe(Math.max(...Object.values(clocking).map(away)))
    }
  })

  it('finds neighbours in line, a gap on a thrust face and one over the pin', () => {
    expect(clockingFaults({ 'top-ring': 40_000, 'second-ring': 45_000 }, 3)).toEqual([
      { gap: 'second-ring', against: 'top-ring', distance: 5_000, least: 45_000 },
    ])
    expect(clockingFaults({ expander: 95_000 }, 3)).toMatchObject([
      { against: 'major-thrust', distance: 5_000 },
    ])
    expect(clockingFaults({ expander: 95_000 }, 9)).toMatchObject([
      { against: 'minor-thrust', distance: 5_000 },
    ])
    expect(clockingFaults({ 'top-ring': 355_000 }, 3)).toMatchObject([{ against: 'pin', distance: 5_000 }])
  })

  it('has the same faults when piston and thrust are mirrored', () => {
    const angle = fc.integer({ min: 0, max: 360_000 })
    fc.assert(
      fc.property(angle, angle, angle, (top, second, expander) => {
        const faults = clockingFaults({ 'top-ring': top, 'second-ring': second, expander }, 3)
        const mirrored = clockingFaults(
          {
            'top-ring': 360_000 - top,
            'second-ring': 360_000 - second,
            expander: 360_000 - expander,
          },
          9,
        )
        expect(mirrored).toEqual(faults)
      }),
    )
  })

  it('refuses an angle beyond one turn', () => {
    expect(() => clockingFaults({ expander: 361_000 }, 3)).toThrow(
      expect.objectContaining({ code: 'value-out-of-range' }),
    )
  })
})
