import { clockedGaps, orientations, starterClocking, type EngineSpecification, type FeatureDefinition, type RingClock } from '@tenths/domain'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pinInRod, tenth } from '../bench/testing/samples.ts'
import { deviationWords, mapBores } from './bore-map.ts'
import { describeOrientation, drawOrientation } from './orientation-drawing.ts'
import { describeFromFront, drawFromFront, type EngineLayout } from './orientation-front.ts'
import { clockTime, describeClock, drawClocks, faultSentences, spotAt } from './ring-clock.ts'
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

  const layout: EngineLayout = { arrangement: 'v', bankAngle: 90_000, rotation: 'clockwise', pistonsHaveFrontMark: true }
  const seen = (engine: EngineSpecification, changes: Partial<EngineLayout> = {}) =>
    drawFromFront(orientations(engine), { ...layout, arrangement: engine.arrangement, bankAngle: engine.bankAngle, ...changes })
  const flat: EngineSpecification = { ...v4, arrangement: 'flat', bankAngle: 180_000, pinSharing: 'one-rod' }

  it('shows from the front each bank on its own side, the rod that stands in front drawn last', () => {
    const [rear, front] = seen({ ...v4, bankAngle: 90_000 })
    expect(front!.facing).toMatchObject({ bank: 'viewer-right', wideChamferFaces: 'front' })
    expect(front!.pistonPin.x).toBeGreaterThan(0)
    expect(rear!.pistonPin.x).toBeCloseTo(-front!.pistonPin.x, 9)
    expect(rear!.pistonPin.y).toBeCloseTo(front!.pistonPin.y, 9)
    expect(rear!.crankpin).toEqual(front!.crankpin)
  })

  it('draws every rod as long as every other, whatever the layout', () => {
    for (const engine of [v4, flat, { ...v4, bankAngle: 72_000, pinSharing: 'split-pin' as const }]) {
      for (const { crankpin, pistonPin } of seen(engine)) {
        expect(Math.hypot(pistonPin.x - crankpin.x, pistonPin.y - crankpin.y)).toBeCloseTo(92, 9)
      }
    }
  })

  it('puts the major thrust of a flat engine down on the viewer’s left and up on the right', () => {
    for (const { facing, tilt, thrust } of seen(flat)) {
      // A piston turned by its tilt has its own left at this height; y grows downward.
      const height = Math.sin(((tilt + (thrust === 'left' ? 180 : 0)) * Math.PI) / 180)
      expect(height > 0 ? 'down' : 'up').toBe(facing.majorThrust)
    }
  })

  it('says from the front which side of the rods faces the viewer', () => {
    const words = seen({ ...v4, bankAngle: 90_000 }).map((bank) => describeFromFront(bank, layout))
    expect(words).toEqual([
      'From the front: Cylinders 3, 4, on your left: the narrow side of the rods faces you; front marks face you; major thrust to your left.',
      'From the front: Cylinders 1, 2, on your right: the wide chamfer of the rods faces you; front marks face you; major thrust to your left.',
    ])
  })

  it('speaks of no front mark where the pistons have none', () => {
    const unmarked = { ...layout, pistonsHaveFrontMark: false }
    expect(describeOrientation(at(1).orientation, false)).not.toContain('mark')
    expect(describeFromFront(seen(v4)[0]!, unmarked)).not.toContain('mark')
  })
})

describe('the ring-gap clock', () => {
  const clock = (cylinder: number, majorThrustHour: 3 | 9): RingClock => {
    const clocking = starterClocking(majorThrustHour, false)
    return {
      cylinder, majorThrustHour, faults: [],
      gaps: clockedGaps.flatMap((gap) => (clocking[gap] === undefined ? [] : [{ gap, angle: clocking[gap] }])),
    }
  }

  it('draws clocks that are alike once, and others apart', () => {
    const drawn = drawClocks([clock(1, 3), clock(2, 3), clock(3, 9)])
    expect(drawn.map(({ cylinders }) => cylinders)).toEqual([[1, 2], [3]])
  })

  it('lays the front up, three o’clock to the right, and every gap on its own circle at its own angle', () => {
    expect(spotAt(10, 0).y).toBeCloseTo(-10, 9)
    expect(spotAt(10, 90_000).x).toBeCloseTo(10, 9)
    const [{ rings } = { rings: [] }] = drawClocks([clock(1, 3)])
    expect(rings).toHaveLength(5)
    expect(new Set(rings.map(({ radius }) => radius)).size).toBe(5)
    for (const { at, radius, angle } of rings) {
      expect(Math.hypot(at.x, at.y)).toBeCloseTo(radius, 9)
      expect((Math.atan2(at.x, -at.y) * 180_000) / Math.PI).toBeCloseTo(angle > 180_000 ? angle - 360_000 : angle, 3)
      // No gap of the starter clock lies toward the major thrust.
      expect(at.x / radius).toBeLessThan(Math.cos(Math.PI / 6))
    }
  })

  it('says the same in words, as times on the clock', () => {
    expect([0, 130_000, 315_000, 359_900].map(clockTime)).toEqual(['12:00', '4:20', '10:30', '12:00'])
    expect(describeClock(drawClocks([clock(1, 3), clock(2, 3)])[0]!)).toBe(
      'Cylinders 1 and 2, seen on the crown with the front of the engine at 12: Top ring at 10:30 (315°); Second ring at 4:20 (130°); '
      + 'Upper oil rail at 10:40 (320°); Oil expander, ends butted at 7:30 (225°); Lower oil rail at 5:20 (160°). '
      + 'Major thrust at 3:00, the pin along 12:00 and 6:00.',
    )
  })

  it('names what its own rule finds wrong', () => {
    expect(faultSentences({ faults: [{ gap: 'expander', against: 'major-thrust', distance: 12_000, least: 30_000 }] }))
      .toEqual(['Oil expander, ends butted: 12° from the major thrust side, 30° at least.'])
  })
})
