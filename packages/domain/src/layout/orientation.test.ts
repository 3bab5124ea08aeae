import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import type { EngineSpecification } from '../engine/specification.ts'
import { validateEngine } from '../engine/validate.ts'
import { anyEngine, anyV } from '../testing/any-engine.ts'
import { flatFour, v6, v8 } from '../testing/engines.ts'
import { cylinderPositions, cylindersInHandOrder } from './banks.ts'
import { orientations } from './orientation.ts'

/** A vector for the viewer in front of the engine: x to the viewer's right, y up. */
interface Vector {
  readonly x: number
  readonly y: number
}

/** From crank to crown. */
function axisOf(engine: EngineSpecification, bank: 'viewer-left' | 'viewer-right' | null): Vector {
  const tilt = bank === null ? 0 : (engine.bankAngle / 2_000) * (Math.PI / 180)
  return { x: bank === 'viewer-left' ? -Math.sin(tilt) : Math.sin(tilt), y: Math.cos(tilt) }
}

/**
 * The side force on the piston, from the slider-crank itself: a few degrees after top centre the pressed
 * rod pushes the piston along the line from crankpin to piston pin, and what is across the axis lands on
 * the wall.
 */
function sideForce(engine: EngineSpecification, axis: Vector): Vector {
  const turned = ((engine.rotation === 'clockwise' ? -1 : 1) * (20 * Math.PI)) / 180
  const pin = {
    x: axis.x * Math.cos(turned) - axis.y * Math.sin(turned),
    y: axis.x * Math.sin(turned) + axis.y * Math.cos(turned),
  }
  const along = pin.x * axis.x + pin.y * axis.y
  const reach = along + Math.sqrt(9 - (1 - along ** 2))
  const rod = { x: axis.x * reach - pin.x, y: axis.y * reach - pin.y }
  const onAxis = rod.x * axis.x + rod.y * axis.y
  return { x: rod.x - onAxis * axis.x, y: rod.y - onAxis * axis.y }
}

/** Right-hand side of the crown for who looks down on it with the front up: front × axis. */
function threeOClock(axis: Vector): Vector {
  return { x: -axis.y, y: axis.x }
}

describe('which way round', () => {
  it('puts the major thrust at 3 o’clock on every crown, front up, for a clockwise crank, else at 9', () => {
    fc.assert(
      fc.property(anyEngine, (engine) => {
        validateEngine(engine)
        for (const { bank, majorThrustHour } of orientations(engine)) {
          const axis = axisOf(engine, bank)
          const force = sideForce(engine, axis)
          const right = threeOClock(axis)
          const hour = force.x * right.x + force.y * right.y > 0 ? 3 : 9
          expect(majorThrustHour).toBe(hour)
          expect(majorThrustHour).toBe(engine.rotation === 'clockwise' ? 3 : 9)
        }
      }),
    )
  })

  it('names the side of the thrust as the force on the piston points, for the viewer in front', () => {
    fc.assert(
      fc.property(anyEngine, (engine) => {
        for (const { bank, majorThrust } of orientations(engine)) {
          const force = sideForce(engine, axisOf(engine, bank))
          const flat = engine.arrangement === 'flat'
          const expected = flat ? (force.y > 0 ? 'up' : 'down') : force.x > 0 ? 'right' : 'left'
          expect(majorThrust).toBe(expected)
        }
      }),
    )
  })

  it('gives every assembly of a V with shared pins the same hand from notch to chamfer', () => {
    fc.assert(
      fc.property(anyV, (engine) => {
        const hands = new Set(orientations(engine).map(({ notchToChamfer }) => notchToChamfer))
        expect(hands.size).toBe(1)
        expect(hands.has(null)).toBe(engine.pinSharing !== 'two-plain-rods')
      }),
    )
  })

  it('gives every assembly of one bank the same side of the chamfer, and the other bank the other', () => {
    fc.assert(
      fc.property(anyV, (engine) => {
        const byBank = new Map<string | null, Set<string | null>>()
        for (const { bank, hand } of orientations(engine)) {
          byBank.set(bank, (byBank.get(bank) ?? new Set()).add(hand))
        }
        for (const hands of byBank.values()) expect(hands.size).toBe(1)
        const hands = new Set([...byBank.values()].flatMap((each) => [...each]))
        expect(hands.size).toBe(engine.pinSharing === 'two-plain-rods' ? 2 : 1)
      }),
    )
  })

  it('fills every place on every crankpin once', () => {
    fc.assert(
      fc.property(anyEngine, (engine) => {
        const places = orientations(engine).map(({ crankpin, placeOnPin }) => `${crankpin}/${placeOnPin}`)
        const journals = new Set(orientations(engine).map(({ crankpin }) => crankpin))
        expect(journals.size).toBe(engine.rodJournals.count)
        if (engine.pinSharing !== 'fork-and-blade') expect(new Set(places).size).toBe(engine.cylinders)
      }),
    )
  })

  it('faces cylinder 1’s wide chamfer to the front, 5’s to the back, on a V8 with 1–4 leading 5–8', () => {
    const of = orientations(v8)
    expect(of[0]).toMatchObject({ cylinder: 1, crankpin: 1, placeOnPin: 1, wideChamferFaces: 'front' })
    expect(of[4]).toMatchObject({ cylinder: 5, crankpin: 1, placeOnPin: 2, wideChamferFaces: 'back' })
  })

  it('gives no rod of a split pin a side', () => {
    expect(orientations(v6).every(({ wideChamferFaces }) => wideChamferFaces === null)).toBe(true)
    expect(orientations(v6).map(({ crankpin }) => crankpin)).toEqual([1, 2, 3, 4, 5, 6])
  })

  it('thrusts down on the viewer’s left of a flat engine and up on the other', () => {
    const sides = orientations(flatFour).map(({ bank, majorThrust }) => `${bank} ${majorThrust}`)
    expect(new Set(sides)).toEqual(new Set(['viewer-left down', 'viewer-right up']))
  })
})

describe('banks', () => {
  it('number by bank or alternating', () => {
    const bankOf = (engine: EngineSpecification) =>
      cylinderPositions(engine).map(
        ({ bank, row }) => `${bank === engine.firstBank ? 'first' : 'other'} ${row}`,
      )
    expect(bankOf(v8)).toEqual([
      'first 1',
      'first 2',
      'first 3',
      'first 4',
      'other 1',
      'other 2',
      'other 3',
      'other 4',
    ])
    expect(bankOf(v6)).toEqual(['first 1', 'other 1', 'first 2', 'other 2', 'first 3', 'other 3'])
  })

  it('are walked one after the other', () => {
    expect(cylindersInHandOrder(v6)).toEqual([1, 3, 5, 2, 4, 6])
  })

  it('must be named where there are two', () => {
    expect(() => orientations({ ...v8, firstBank: null })).toThrow(
      expect.objectContaining({ code: 'layout-impossible' }),
    )
  })
})
