import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import {
  fastestAngle,
  meanPistonSpeed,
  pistonAcceleration,
  pistonDrop,
  pistonSpeed,
} from './slider-crank.ts'
import { leastValveRoom } from './piston-to-valve.ts'

const crank = fc
  .record({
    stroke: fc.double({ min: 40, max: 200, noNaN: true }),
    ratio: fc.double({ min: 1.2, max: 2.8, noNaN: true }),
  })
  .map(({ stroke, ratio }) => ({ stroke, rod: stroke * ratio }))
const angle = fc.integer({ min: -720_000, max: 720_000 })
/** Radians in a step of one degree. */
const step = Math.PI / 180

describe('piston travel', () => {
  it('is nothing at top centre, the stroke at bottom centre, and the same before and after', () => {
    fc.assert(
      fc.property(crank, angle, (engine, at) => {
        expect(pistonDrop(engine, 0)).toBe(0)
        expect(pistonDrop(engine, 180_000)).toBeCloseTo(engine.stroke, 9)
        expect(pistonDrop(engine, at)).toBeCloseTo(pistonDrop(engine, -at), 9)
      }),
    )
  })

  it('has its speed as slope, and its speed the acceleration', () => {
    fc.assert(
      fc.property(crank, angle, (engine, at) => {
        const slope = (of: typeof pistonDrop) => (of(engine, at + 500) - of(engine, at - 500)) / step
        expect(Math.abs(slope(pistonDrop) - pistonSpeed(engine, at))).toBeLessThan(engine.stroke * 1e-4)
        expect(Math.abs(slope(pistonSpeed) - pistonAcceleration(engine, at))).toBeLessThan(
          engine.stroke * 1e-3,
        )
      }),
    )
  })

  it('is fastest where no other angle on the way down is faster', () => {
    fc.assert(
      fc.property(crank, fc.integer({ min: 0, max: 180_000 }), (engine, at) => {
        expect(pistonSpeed(engine, at)).toBeLessThanOrEqual(
          pistonSpeed(engine, fastestAngle(engine)) * (1 + 1e-12),
        )
      }),
    )
  })

  it.each([
    ['a rod shorter than the throw', () => pistonDrop({ stroke: 100, rod: 50 }, 0)],
    ['no stroke', () => pistonDrop({ stroke: 0, rod: 50 }, 0)],
    ['an angle that is no number', () => pistonSpeed({ stroke: 100, rod: 150 }, Number.NaN)],
    ['a speed backwards', () => meanPistonSpeed(0.1, -1)],
  ])('is refused for %s', (_, compute) => {
    expect(compute).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
  })
})

describe('room between piston and valve', () => {
  const engine = { stroke: 3.5, rod: 5.7 }
  const curve = [-20_000, -10_000, 0, 10_000, 20_000].map((at) => ({
    angle: at,
    lift: 0.05 + at / 400_000,
  }))

  it('is least where the valve has opened more than the piston has left', () => {
    // At 10° the piston is 0.0349 in down and the valve 0.025 in further open than at top centre.
    const { room, angle: where } = leastValveRoom(engine, 0.2, 0, curve)
    expect(where).toBe(0)
    expect(room).toBeCloseTo(0.15, 12)
    const steeper = curve.map((each) => ({ ...each, lift: 0.05 + each.angle / 200_000 }))
    expect(leastValveRoom(engine, 0.2, 0, steeper).angle).toBe(10_000)
  })

  it('shrinks with the valve’s angle, which sees less of the piston’s travel', () => {
    const opening = curve.map((each) => ({ ...each, lift: 0.05 + each.angle / 200_000 }))
    expect(leastValveRoom(engine, 0.2, 23_000, opening).room).toBeLessThan(
      leastValveRoom(engine, 0.2, 0, opening).room,
    )
  })

  it('needs a lift curve', () => {
    expect(() => leastValveRoom(engine, 0.2, 0, [])).toThrow(
      expect.objectContaining({ code: 'value-out-of-range' }),
    )
  })
})
