import { describe, expect, it } from 'vitest'
import { outOfRound, sizeOf, taper } from './form.ts'
import { expandedUncertainty, rootSumSquare, standardUncertainty } from './uncertainty.ts'
import { nanometresOf } from '../exact/length.ts'
import { deriveFeature, describeFeature } from './derived.ts'

const readings = [
  { station: 'top', axis: 'thrust', value: 102_365_000 },
  { station: 'top', axis: 'pin', value: 102_360_000 },
  { station: 'bottom', axis: 'thrust', value: 102_356_000 },
  { station: 'bottom', axis: 'pin', value: 102_358_000 },
]

describe('form of a bore', () => {
  it('compares axes at one depth for out-of-round, depths on one axis for taper, and says where', () => {
    expect(outOfRound(readings)).toEqual({ value: 5_000, at: 'top' })
    expect(taper(readings)).toEqual({ value: 9_000, at: 'thrust' })
  })
  it('is unknown where only one axis or one depth was read', () => {
    expect(outOfRound(readings.filter(({ axis }) => axis === 'pin'))).toBeNull()
    expect(taper(readings.filter(({ station }) => station === 'top'))).toBeNull()
  })
  it('has a mean rounded half to even, a least and a greatest size', () => {
    expect(sizeOf([1, 2])).toEqual({ mean: 2, least: 1, greatest: 2 })
    expect(sizeOf([2, 3])).toEqual({ mean: 2, least: 2, greatest: 3 })
    expect(() => sizeOf([])).toThrow(expect.objectContaining({ code: 'point-unknown' }))
  })
})

describe('a feature as a page shows it', () => {
  const definition = {
    place: 'block', feature: 'bore/1', title: 'Bore 1', shape: 'hole', quantity: 'length', nominal: null, state: [],
    points: readings.map(({ station, axis }) => ({ key: `${station}/${axis}`, station, axis })),
  } as const
  const pass = {
    partId: 'b', feature: 'bore/1', number: 1, standardUncertainty: 500, state: [], setOn: null,
    readings: readings.map(({ station, axis, value }) => ({ id: axis + station, point: `${station}/${axis}`, value })),
  }
  it('is described in words from a full pass', () => {
    expect(describeFeature(deriveFeature(definition, pass), 'millimetre')).toBe(
      '102.356 mm to 102.365 mm. Out-of-round 0.005 mm at the top. Taper 0.009 mm on the thrust axis. (Two-point, section by section.)')
  })
  it('offers neither size nor taper while points are missing', () => {
    const derived = deriveFeature(definition, { ...pass, readings: pass.readings.slice(1) })
    expect(derived).toEqual({ complete: false, size: null, outOfRound: null, taper: null })
    expect(describeFeature(derived, 'inch')).toBe('Not fully measured.')
    expect(deriveFeature(definition, null).complete).toBe(false)
  })
})

describe('uncertainty', () => {
  it('adds by the root of the sum of squares', () => {
    expect(rootSumSquare(3, 4)).toBe(5)
    expect(() => rootSumSquare(-1)).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
    expect(() => rootSumSquare(Number.NaN)).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
  })
  it('of a gauge holds its resolution, calibration and repeatability', () => {
    const resolution = { display: 'digital', division: nanometresOf(1_000) } as const
    expect(standardUncertainty({ resolution, calibration: null, repeatability: null })).toBeCloseTo(288.675, 3)
    const all = standardUncertainty({ resolution, calibration: { expanded: 1_200, coverageFactor: 2 }, repeatability: 400 })
    expect(all).toBeCloseTo(Math.sqrt(288.675134595 ** 2 + 600 ** 2 + 400 ** 2), 6)
    const dial = { display: 'analogue', division: nanometresOf(2_000) } as const
    expect(standardUncertainty({ resolution: dial, calibration: null, repeatability: null })).toBeCloseTo(288.675, 3)
  })
  it('is expanded by k', () => {
    expect(expandedUncertainty(635, 2)).toBe(1_270)
    expect(() => expandedUncertainty(635, 0)).toThrow(expect.objectContaining({ code: 'value-out-of-range' }))
  })
})
