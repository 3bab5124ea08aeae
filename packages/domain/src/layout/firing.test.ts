import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { inlineFour, single, v8 } from '../testing/engines.ts'
import { firingEvents } from './firing.ts'

const leftFirst = { ...v8, firstBank: 'viewer-left' as const, leadingBank: 'viewer-left' as const }
const order = [1, 5, 4, 2, 6, 3, 7, 8]

describe('firing order', () => {
  it('of an inline four puts the outer pistons up together and the inner ones opposite', () => {
    const events = firingEvents(inlineFour, [1, 3, 4, 2])
    expect(events.map(({ cylinder, firesAt, pinAngle }) => [cylinder, firesAt, pinAngle])).toEqual([
      [1, 0, 0],
      [3, 180_000, 180_000],
      [4, 360_000, 0],
      [2, 540_000, 180_000],
    ])
  })

  it('of a 90° V8 with four crossed throws gives each throw one place', () => {
    const pins = new Map(
      firingEvents(leftFirst, order).map(({ cylinder, pinAngle }) => [cylinder, pinAngle]),
    )
    // Cylinders 1 and 5, 2 and 6, 3 and 7, 4 and 8 share a pin.
    expect([1, 2, 3, 4].map((cylinder) => pins.get(cylinder))).toEqual([0, 270_000, 90_000, 180_000])
    expect([5, 6, 7, 8].map((cylinder) => pins.get(cylinder))).toEqual([0, 270_000, 90_000, 180_000])
  })

  it('of the mirrored engine turning the other way is the same', () => {
    const mirrored = { ...v8, rotation: 'counterclockwise' as const }
    expect(firingEvents(mirrored, order)).toEqual(firingEvents(leftFirst, order))
  })

  it('is refused on an engine whose shared pins it would tear in two', () => {
    expect(() => firingEvents(v8, order)).toThrow(expect.objectContaining({ code: 'layout-impossible' }))
  })

  it('of a 90° V-twin on one pin fires after 270 and 450 degrees', () => {
    const twin = {
      ...leftFirst,
      cylinders: 2,
      mains: { ...v8.mains, count: 2 },
      rodJournals: { ...v8.rodJournals, count: 1 },
    }
    expect(firingEvents(twin, [1, 2], [450_000, 270_000]).map(({ pinAngle }) => pinAngle)).toEqual([0, 0])
    expect(() => firingEvents(twin, [1, 2])).toThrow(expect.objectContaining({ code: 'layout-impossible' }))
  })

  it('of a single is one event', () => {
    expect(firingEvents(single, [1])).toEqual([{ cylinder: 1, firesAt: 0, pinAngle: 0 }])
  })

  it('names every cylinder once and closes after two turns', () => {
    for (const wrong of [
      [1, 2, 3],
      [1, 2, 3, 3],
      [0, 1, 2, 3],
      [1, 2, 3, 4.5],
    ]) {
      expect(() => firingEvents(inlineFour, wrong)).toThrow(
        expect.objectContaining({ code: 'layout-impossible' }),
      )
    }
    for (const steps of [[180_000], [1, 2, 3, 4], [720_000, 180_000, -180_000, 0]]) {
      expect(() => firingEvents(inlineFour, [1, 3, 4, 2], steps)).toThrow(
        expect.objectContaining({ code: 'layout-impossible' }),
      )
    }
  })

  it('spreads any number in line evenly over two turns', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 8 }), (cylinders) => {
        const engine = {
          ...inlineFour,
          cylinders,
          rodJournals: { ...inlineFour.rodJournals, count: cylinders },
        }
        const events = firingEvents(
          engine,
          Array.from({ length: cylinders }, (_, index) => index + 1),
        )
        for (const [index, { firesAt }] of events.entries()) {
          expect(firesAt).toBeCloseTo((index * 720_000) / cylinders, 6)
        }
      }),
    )
  })
})
