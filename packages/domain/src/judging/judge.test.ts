import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { FeatureDefinition, MeasuringState } from '../features/feature.ts'
import { measurementsOf, type FeaturePass, type PlacedPart } from '../measuring/pass.ts'
import { judge, judgeAll } from './judge.ts'
import { reducers, type Guard, type Limits, type Measurand, type Requirement } from './requirement.ts'
import { verdictKinds, type VerdictKind } from './verdict.ts'

const tenth = 2_540
const noLimits: Limits = { low: null, high: null, target: null, adviceLow: null, adviceHigh: null }
const guarded: Guard = { kind: 'guarded', coverageFactor: 2 }

function feature(
  place: string, name: string, shape: FeatureDefinition['shape'], points: readonly string[], state: readonly MeasuringState[] = [],
): FeatureDefinition {
  return {
    place, feature: name, title: `${name} of ${place.replace('/', ' ')}`, shape, quantity: 'length', nominal: null, state,
    points: points.map((key) => {
      const [station = key, axis = 'only'] = key.split('/')
      return { key, station, axis }
    }),
  }
}

function pass(
  partId: string, name: string, values: Record<string, number>, more: Partial<FeaturePass> = {},
): FeaturePass {
  const number = more.number ?? 1
  return {
    partId, feature: name, number, standardUncertainty: 0, state: [], setOn: null,
    readings: Object.entries(values).map(([point, value]) => ({ id: `${partId}.${name}.${number}.${point}`, point, value })),
    ...more,
  }
}

function requirement(measurand: Measurand, limits: Partial<Limits>, more: Partial<Requirement> = {}): Requirement {
  return {
    key: 'fit/1', fit: 'fit', title: 'A fit', position: 1, quantity: 'length', measurand,
    limits: { ...noLimits, ...limits }, guard: { kind: 'none' }, critical: false, remedy: { low: null, high: null },
    why: { rule: 'fit', revision: 1, level: 'starter', formula: '', worked: [], source: '' },
    ...more,
  }
}

const small = feature('rod/1', 'small-end', 'hole', ['front', 'back'])
const pin = feature('piston-pin/1', 'diameter', 'shaft', ['front', 'back'])
const features = [small, pin]
const placed: PlacedPart[] = [{ place: 'rod/1', partId: 'r' }, { place: 'piston-pin/1', partId: 'p' }]
const clearance = { kind: 'clearance', hole: small, shaft: pin, pairing: 'overall' } as const
const pinFit = requirement(clearance, { low: 6 * tenth, high: 10 * tenth, target: 7 * tenth }, {
  remedy: {
    low: { action: 'hone', feature: small, words: 'Let it cool before measuring.' },
    high: { action: 'replace', feature: small, words: '' },
  },
})
const setOnPin = { setOn: { partId: 'p', feature: 'diameter' } }

describe('what is measured', () => {
  it('names every missing point of hole and shaft', () => {
    const verdict = judge(pinFit, measurementsOf(placed, [pass('r', 'small-end', { front: 10 })]), features)
    expect(verdict).toMatchObject({
      kind: 'not-measured', least: null, probability: null, readings: [],
      missing: ['rod/1#small-end@back', 'piston-pin/1#diameter@front', 'piston-pin/1#diameter@back'],
      advice: 'small-end of rod 1: 1 of 2 points are measured in pass 1.',
    })
  })

  it('after a re-hone with one of two points measured is not measured, though the earlier pass was full', () => {
    const passes = [
      pass('r', 'small-end', { front: 24_000_000, back: 24_000_000 }),
      pass('p', 'diameter', { front: 23_980_000, back: 23_980_000 }),
      pass('r', 'small-end', { front: 24_001_000 }, { number: 2 }),
    ]
    const verdict = judge(pinFit, measurementsOf(placed, passes), features)
    expect(verdict.kind).toBe('not-measured')
    expect(verdict.missing).toEqual(['rod/1#small-end@back'])
  })

  it('follows the part: swapped parts swap their clearances, an empty place has none', () => {
    const passes = [
      pass('r', 'small-end', { front: 24_000_000, back: 24_000_000 }),
      pass('p', 'diameter', { front: 23_980_000, back: 23_980_000 }),
      pass('q', 'diameter', { front: 23_970_000, back: 23_970_000 }),
    ]
    const with_ = (partId: string) => judge(
      pinFit, measurementsOf([{ place: 'rod/1', partId: 'r' }, { place: 'piston-pin/1', partId }], passes), features)
    expect(with_('p').least).toBe(20_000)
    expect(with_('q').least).toBe(30_000)
    const empty = judge(pinFit, measurementsOf([{ place: 'rod/1', partId: 'r' }], passes), features)
    expect(empty).toMatchObject({ kind: 'not-measured', advice: 'No part is in piston pin 1.' })
  })

  it('counts only in the state that the feature asks for', () => {
    const bore = feature('block', 'bore-1', 'hole', ['top/thrust', 'top/pin'], ['torque-plate-on'])
    const round = requirement({ kind: 'feature', feature: bore, reducer: 'out-of-round' }, { high: 5 * tenth })
    const values = { 'top/thrust': 100_000_000, 'top/pin': 100_000_000 }
    const judged = (state: readonly MeasuringState[]) =>
      judge(round, measurementsOf([{ place: 'block', partId: 'b' }], [pass('b', 'bore-1', values, { state })]), [bore])
    expect(judged(['torque-plate-on', 'soaked']).kind).toBe('within')
    expect(judged([])).toMatchObject({
      kind: 'not-measured', missing: ['block#bore-1@top/thrust', 'block#bore-1@top/pin'],
      advice: 'bore-1 of block: it was not measured with torque plate on. Measure it again so.',
    })
  })

  it('rests on the readings of the latest passes and on no other', () => {
    const passes = [
      pass('r', 'small-end', { front: 1, back: 1 }),
      pass('r', 'small-end', { front: 24_000_000, back: 24_000_000 }, { number: 2 }),
      pass('p', 'diameter', { front: 23_980_000, back: 23_980_000 }),
    ]
    expect(judge(pinFit, measurementsOf(placed, passes), features).readings).toEqual([
      'r.small-end.2.front', 'r.small-end.2.back', 'p.diameter.1.front', 'p.diameter.1.back',
    ])
  })

  it('refuses a plan that refers to a feature it does not define', () => {
    expect(() => judge(pinFit, measurementsOf(placed, []), [pin])).toThrow(
      expect.objectContaining({ code: 'feature-unknown' }))
  })
})

describe('a running clearance', () => {
  const passes = [
    pass('r', 'small-end', { front: 24_000_000, back: 24_003_000 }, { standardUncertainty: 300 }),
    pass('p', 'diameter', { front: 23_980_000, back: 23_984_000 }, { standardUncertainty: 400 }),
  ]
  it('is judged on both sides: least hole less greatest shaft, greatest hole less least shaft', () => {
    const verdict = judge(pinFit, measurementsOf(placed, passes), features)
    expect([verdict.least, verdict.greatest]).toEqual([16_000, 23_000])
  })
  it('pairs the same station where it is told to', () => {
    const byStation = { ...pinFit, measurand: { ...clearance, pairing: 'by-station' as const } }
    const verdict = judge(byStation, measurementsOf(placed, passes), features)
    expect([verdict.least, verdict.greatest]).toEqual([19_000, 20_000])
  })
  it('carries the uncertainties of both measurements, root of the sum of squares', () => {
    expect(judge(pinFit, measurementsOf(placed, passes), features).uncertainty).toBe(1_000)
  })
  it('cannot be paired by station where the features share none', () => {
    const other = feature('piston-pin/1', 'diameter', 'shaft', ['middle'])
    const apart = { ...pinFit, measurand: { ...clearance, pairing: 'by-station' as const } }
    const measured = measurementsOf(placed, [passes[0]!, pass('p', 'diameter', { middle: 23_980_000 })])
    expect(() => judge(apart, measured, [small, other])).toThrow(expect.objectContaining({ code: 'point-unknown' }))
  })
})

describe('a gauge set on the mating part', () => {
  const read = (tenths: number, more: Partial<FeaturePass> = {}) =>
    pass('r', 'small-end', { front: tenths * tenth, back: tenths * tenth }, { standardUncertainty: 635, ...setOnPin, ...more })

  it('reads the clearance itself, with one uncertainty and without the mate being measured', () => {
    const verdict = judge(pinFit, measurementsOf(placed, [read(7)]), features)
    expect(verdict).toMatchObject({ kind: 'within', least: 7 * tenth, greatest: 7 * tenth, uncertainty: 1_270 })
  })
  it('says nothing of another part that now sits in the place', () => {
    const swapped = measurementsOf([placed[0]!, { place: 'piston-pin/1', partId: 'q' }], [read(7)])
    expect(judge(pinFit, swapped, features)).toMatchObject({
      kind: 'not-measured',
      advice: 'small-end of rod 1: the gauge was set on another part than the one now in piston pin 1. Set it on this one and measure again.',
    })
  })
  it('does not give the size of the feature, but does give its form', () => {
    const measured = measurementsOf(placed, [pass('r', 'small-end', { front: 700, back: 900 }, setOnPin)])
    const size = requirement({ kind: 'feature', feature: small, reducer: 'mean' }, { low: 0 })
    expect(judge(size, measured, features).kind).toBe('not-measured')
    const spread = requirement({ kind: 'feature', feature: small, reducer: 'range' }, { high: 300 })
    expect(judge(spread, measured, features)).toMatchObject({ kind: 'within', greatest: 200 })
    const sum = requirement({ kind: 'sum', constant: 0, terms: [{ feature: small, factor: 1, reducer: 'mean' }] }, { low: 0 })
    expect(judge(sum, measured, features).kind).toBe('not-measured')
  })
})

describe('reducers', () => {
  const bore = feature('block', 'bore-1', 'hole', ['top/thrust', 'top/pin', 'bottom/thrust', 'bottom/pin'])
  const measured = measurementsOf([{ place: 'block', partId: 'b' }], [pass('b', 'bore-1', {
    'top/thrust': 1_000_009, 'top/pin': 1_000_004, 'bottom/thrust': 1_000_000, 'bottom/pin': 1_000_002,
  }, { standardUncertainty: 3 })])
  it.each([
    ['each', 1_000_000, 1_000_009, 6],
    ['least', 1_000_000, 1_000_000, 6],
    ['greatest', 1_000_009, 1_000_009, 6],
    ['mean', 1_000_004, 1_000_004, 6],
    ['range', 9, 9, 6 * Math.SQRT2],
    ['out-of-round', 5, 5, 6 * Math.SQRT2],
    ['taper', 9, 9, 6 * Math.SQRT2],
  ] as const)('%s gives %i to %i, and a difference of two readings carries both uncertainties', (reducer, least, greatest, U) => {
    const verdict = judge(requirement({ kind: 'feature', feature: bore, reducer }, {}), measured, [bore])
    expect([verdict.least, verdict.greatest]).toEqual([least, greatest])
    expect(verdict.uncertainty).toBeCloseTo(U, 9)
  })
  it('a form that the points cannot tell is an error of the plan', () => {
    const oneAxis = feature('block', 'bore-1', 'hole', ['top/thrust', 'bottom/thrust'])
    const asked = requirement({ kind: 'feature', feature: oneAxis, reducer: 'out-of-round' }, { high: 1 })
    expect(() => judge(asked, measured, [oneAxis])).toThrow(expect.objectContaining({ code: 'point-unknown' }))
  })
  it('a sum adds a constant and features times their factors, rounded once', () => {
    const sum = requirement({
      kind: 'sum', constant: 500,
      terms: [{ feature: bore, factor: 1, reducer: 'least' }, { feature: bore, factor: -0.5, reducer: 'greatest' }],
    }, {})
    const verdict = judge(sum, measured, [bore])
    expect(verdict.least).toBe(500_496)
    expect(verdict.uncertainty).toBeCloseTo(2 * Math.hypot(3, 1.5), 9)
  })
})

describe('advice', () => {
  const gap = feature('top-ring/1', 'end-gap', 'gap', ['gap'])
  const at = (value: number, u = 0) =>
    measurementsOf([{ place: 'top-ring/1', partId: 't' }], [pass('t', 'end-gap', { gap: value }, { standardUncertainty: u })])
  const end = requirement({ kind: 'feature', feature: gap, reducer: 'each' }, { low: 180 * tenth, adviceHigh: 240 * tenth })
  it('is shown beyond an advisory figure, and the verdict stays within', () => {
    expect(judge(end, at(300 * tenth), [gap])).toMatchObject({
      kind: 'within', advice: 'More than the 0.0240 in advised: it may be used, but look at it.' })
    expect(judge(end, at(200 * tenth), [gap]).advice).toBeNull()
    const low = requirement(end.measurand, { adviceLow: 200 * tenth })
    expect(judge(low, at(100 * tenth), [gap]).advice).toContain('Less than the 0.0200 in advised')
  })
  it('never says of a value outside its limits that it may be used', () => {
    const flat = requirement(end.measurand, { high: 300 * tenth, adviceHigh: 240 * tenth })
    expect(judge(flat, at(310 * tenth), [gap])).toMatchObject({ kind: 'outside', advice: null })
  })
  it('says that a gauge is too coarse when nothing between the limits can be proven', () => {
    const narrow = requirement(end.measurand, { low: 0, high: 10 }, { guard: guarded })
    expect(judge(narrow, at(5, 5), [gap]).advice).toContain('nothing between these limits can be proven')
  })
  it('is worded in the unit of the shop', () => {
    const verdict = judge(end, at(300 * tenth), [gap], { coverageFactor: 2, unit: 'millimetre' })
    expect(verdict.advice).toContain('0.6096 mm')
  })
})

describe('laws', () => {
  const rank = (kind: VerdictKind) => verdictKinds.indexOf(kind)
  const one = feature('block', 'bore-1', 'hole', ['only'])
  const value = (reading: number, u: number) =>
    measurementsOf([{ place: 'block', partId: 'b' }], [pass('b', 'bore-1', { only: reading }, { standardUncertainty: u })])

  it('a verdict and its probability never improve when a value moves outward from the middle of its limits', () => {
    fc.assert(fc.property(
      fc.integer({ min: 2, max: 40_000 }), fc.integer({ min: 0, max: 60_000 }), fc.integer({ min: 1, max: 60_000 }),
      fc.double({ min: 0, max: 10_000, noNaN: true }), fc.boolean(), fc.constantFrom(1, -1),
      (half, inner, step, u, isGuarded, sign) => {
        const asked = requirement({ kind: 'feature', feature: one, reducer: 'each' }, { low: -half, high: half }, {
          guard: isGuarded ? guarded : { kind: 'none' } })
        const nearer = judge(asked, value(sign * inner, u), [one])
        const farther = judge(asked, value(sign * (inner + step), u), [one])
        expect(rank(farther.kind)).toBeGreaterThanOrEqual(rank(nearer.kind))
        expect(farther.probability).toBeLessThanOrEqual((nearer.probability ?? 0) + 1e-12)
      }))
  })

  it('swapping hole and shaft mirrors a fit', () => {
    const sizes = fc.integer({ min: 20_000_000, max: 20_100_000 })
    fc.assert(fc.property(sizes, sizes, sizes, sizes, (h1, h2, s1, s2) => {
      const measured = measurementsOf(placed, [
        pass('r', 'small-end', { front: h1, back: h2 }), pass('p', 'diameter', { front: s1, back: s2 })])
      const forth = judge(requirement(clearance, { low: -1_000, high: 30_000 }), measured, features)
      const back = judge(
        requirement({ ...clearance, hole: pin, shaft: small }, { low: -30_000, high: 1_000 }), measured, features)
      expect(back.least).toBe(0 - (forth.greatest ?? 0))
      expect(back.greatest).toBe(0 - (forth.least ?? 0))
      expect(back.kind).toBe(forth.kind)
    }))
  })

  it('readings say the same whatever the order they were taken in', () => {
    const bore = feature('block', 'bore-1', 'hole', ['top/thrust', 'top/pin', 'bottom/thrust', 'bottom/pin'])
    const shaft = feature('crankshaft', 'main-1', 'shaft', ['bottom/only', 'top/only'])
    const points = [...bore.points, ...shaft.points].map(({ key }) => key)
    const measurands: Measurand[] = [
      ...reducers.map((reducer) => ({ kind: 'feature', feature: bore, reducer }) as const),
      ...(['overall', 'by-station'] as const).map((pairing) => ({ kind: 'clearance', hole: bore, shaft, pairing }) as const),
      { kind: 'sum', constant: 0, terms: [{ feature: bore, factor: 1, reducer: 'mean' }, { feature: shaft, factor: -1, reducer: 'greatest' }] },
    ]
    const requirements = measurands.map((measurand) => requirement(measurand, { low: 0, high: 100, target: 50 }))
    const both = [{ place: 'block', partId: 'b' }, { place: 'crankshaft', partId: 'c' }]
    fc.assert(fc.property(
      fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 6, maxLength: 6 }), fc.shuffledSubarray(points, { minLength: 6 }),
      (values, order) => {
        const judgedIn = (keys: readonly string[]) => {
          const taken = (definition: FeatureDefinition) => Object.fromEntries(keys
            .filter((key) => definition.points.some((point) => point.key === key))
            .map((key) => [key, values[points.indexOf(key)] ?? 0]))
          const passes = [pass('b', 'bore-1', taken(bore)), pass('c', 'main-1', taken(shaft))]
          return judgeAll({ requirements, features: [bore, shaft] }, measurementsOf(both, passes))
        }
        expect(judgedIn(order)).toEqual(judgedIn(points))
      }))
  })

  it('a guard never makes a verdict better', () => {
    fc.assert(fc.property(fc.integer({ min: -50, max: 150 }), fc.double({ min: 0, max: 40, noNaN: true }), (reading, u) => {
      const simple = requirement({ kind: 'feature', feature: one, reducer: 'each' }, { low: 0, high: 100 })
      if (judge(simple, value(reading, u), [one]).kind === 'outside') return
      expect(judge({ ...simple, guard: guarded }, value(reading, u), [one]).kind).not.toBe('outside')
      if (judge({ ...simple, guard: guarded }, value(reading, u), [one]).kind === 'within') {
        expect(judge(simple, value(reading, u), [one]).kind).toBe('within')
      }
    }))
  })
})

it('a plan is judged requirement by requirement, in its order', () => {
  const requirements = [pinFit, { ...pinFit, key: 'other' }]
  expect(judgeAll({ requirements, features }, measurementsOf(placed, [])).map(({ requirement: key }) => key))
    .toEqual(['fit/1', 'other'])
})
