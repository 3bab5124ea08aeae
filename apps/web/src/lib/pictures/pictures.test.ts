import { orientations, type EngineSpecification, type FeatureDefinition } from '@tenths/domain'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pinInRod, tenth } from '../bench/testing/samples.ts'
import { deviationWords, mapBores } from './bore-map.ts'
import { describeOrientation, drawOrientation } from './orientation-drawing.ts'
import { describeValueInLimits, drawValueInLimits } from './value-in-limits.ts'

const verdict = {
  requirement: pinInRod.key, kind: 'outside', least: 4 * tenth, greatest: 4 * tenth, uncertainty: 1_270, guardBand: 1_270,
  probability: 0, side: 'low', missing: [], readings: [], remedy: null, advice: null,
} as const

describe('the picture of a value in its limits', () => {
  it('keeps everything inside the drawing and in its true order', () => {
    const amount = fc.integer({ min: -100_000, max: 100_000 })
    fc.assert(fc.property(amount, fc.integer({ min: 0, max: 20_000 }), fc.integer({ min: 0, max: 9_000 }), (least, spread, guard) => {
      const drawing = drawValueInLimits(pinInRod, { ...verdict, least, greatest: least + spread, uncertainty: guard, guardBand: guard }, 300)!
      const { low, high, value, uncertainty } = drawing
      for (const x of [low!, high!, value.from, value.to, uncertainty.from, uncertainty.to]) {
        expect(x).toBeGreaterThanOrEqual(0)
        expect(x).toBeLessThanOrEqual(300)
      }
      expect(low!).toBeLessThan(high!)
      expect(value.from < low!).toBe(least < pinInRod.limits.low!)
      expect(value.to > high!).toBe(least + spread > pinInRod.limits.high!)
    }))
  })

  it('is not drawn before anything is measured', () => {
    expect(drawValueInLimits(pinInRod, { ...verdict, least: null, greatest: null }, 300)).toBeNull()
  })

  it('says the same in words', () => {
    expect(describeValueInLimits(pinInRod, verdict, 'inch')).toBe(
      '0.0004 in, give or take 0.00005 in. 0.0002 in below the low limit 0.0006 in. '
      + '0.0006 in inside the high limit 0.0010 in. A guard band of 0.00005 in is kept from each limit.',
    )
  })
})

describe('the bore map', () => {
  const bore = (number: number): FeatureDefinition => ({
    place: 'block', feature: `bore-${number}`, title: `Bore ${number}`, shape: 'hole', quantity: 'length', nominal: null, state: [],
    points: [{ key: 'top/thrust', station: 'top', axis: 'thrust' }, { key: 'bottom/thrust', station: 'bottom', axis: 'thrust' }],
  })
  const values: Record<string, number> = { 'bore-1#top/thrust': 100 * tenth, 'bore-1#bottom/thrust': 104 * tenth, 'bore-2#top/thrust': 99 * tenth }
  const drawing = mapBores([bore(1), bore(2)], 'inch', ({ feature }, point) => values[`${feature}#${point}`] ?? null)

  it('shows every reading as tenths from a whole tenth near the mean, and leaves out what is not measured', () => {
    expect(drawing?.datum).toBe(101 * tenth)
    expect(drawing?.bores.map(({ points }) => points.map(({ deviation }) => deviation))).toEqual([[-1, 3], [-2]])
    expect(drawing?.largest).toBe(3)
  })

  it('signs what is larger and what is smaller', () => {
    expect([3, -0.5, 0].map(deviationWords)).toEqual(['+3', '−0.5', '0'])
  })

  it('is not there before the first reading', () => {
    expect(mapBores([bore(1)], 'inch', () => null)).toBeNull()
  })
})

describe('the picture of which way round', () => {
  const v4: EngineSpecification = {
    name: 'V4', arrangement: 'v', cylinders: 4, bankAngle: 60_000, numbering: 'by-bank', firstBank: 'viewer-right',
    leadingBank: 'viewer-right', rotation: 'clockwise', pinSharing: 'two-plain-rods', cooling: 'water', bore: 0 as never,
    stroke: 0 as never, deckHeight: 0 as never, mains: {} as never, rodJournals: {} as never,
  }
  const drawing = drawOrientation(orientations(v4))
  const at = (cylinder: number) => drawing.cylinders.find(({ orientation }) => orientation.cylinder === cylinder)!

  it('stands cylinders that share a pin side by side, the front rod ahead', () => {
    expect(at(1).x).not.toBe(at(3).x)
    expect(at(1).y).toBeLessThan(at(3).y)
    expect(at(3).y).toBeLessThan(at(2).y)
  })

  it('draws the bank on the viewer’s left at the right, front at the top', () => {
    expect(at(3).orientation.bank).toBe('viewer-left')
    expect(at(3).x).toBeGreaterThan(at(1).x)
  })

  it('says for each cylinder where the wide chamfer and the thrust are', () => {
    expect(describeOrientation(at(1).orientation)).toBe(
      'Cylinder 1: wide chamfer of the rod to the front; front mark to the front; thrust to the left of who stands in front.',
    )
    expect(describeOrientation(at(3).orientation)).toContain('wide chamfer of the rod to the back')
  })
})
