import { describe, expect, it } from 'vitest'
import type { FeatureDefinition } from '../features/feature.ts'
import { toAndFro } from '../features/points.ts'
import { bore, endGap, skirt } from '../features/references.ts'
import type { Requirement } from '../judging/requirement.ts'
import { doubtsOfTaken } from './doubts-of-taken.ts'
import type { KnownPass, Surroundings, TakenValue } from './taken-value.ts'

const tenth = 2_540
const inch = 25_400_000
const hole = (cylinder: number): FeatureDefinition => ({
  ...bore(cylinder), title: `Bore ${cylinder}`, shape: 'hole', quantity: 'length', nominal: 4 * inch,
  points: toAndFro(['top', 'bottom'], ['thrust', 'pin']), state: [],
})
const piston: FeatureDefinition = {
  ...skirt(1), title: 'Piston 1', shape: 'shaft', quantity: 'length', nominal: 4 * inch, points: toAndFro(['gauge-point'], ['thrust']), state: [],
}
const gap: FeatureDefinition = {
  ...endGap('top-ring', 1), title: 'Gap', shape: 'gap', quantity: 'length', nominal: null, points: toAndFro(['square'], ['gap']), state: [],
}
const bores = [hole(1), hole(2)]

function pass(feature: FeatureDefinition, values: readonly (number | null)[], more: Partial<KnownPass> = {}): KnownPass {
  return {
    partId: feature.place, feature: feature.feature, number: 1, operationKey: 'hone', setOn: null, isVoid: false,
    standardUncertainty: tenth / 2, state: [], temperatures: null, setting: null, material: null,
    readings: feature.points.flatMap(({ key }, index) => {
      const value = values[index] ?? null
      return value === null ? [] : [{ id: `${feature.feature}/${more.number ?? 1}/${key}`, point: key, value, supersedes: null, by: 'Ada' }]
    }),
    ...more,
  }
}

const fit: Requirement = {
  key: 'piston-in-bore/1', fit: 'piston-in-bore', title: 'Piston in bore 1', position: 1, quantity: 'length',
  measurand: { kind: 'clearance', hole: bore(1), shaft: skirt(1), pairing: 'overall' },
  limits: { low: 20 * tenth, high: 50 * tenth, target: null, adviceLow: null, adviceHigh: null }, guard: { kind: 'none' },
  critical: false, remedy: { low: null, high: null },
  why: { rule: '', revision: 1, level: 'starter', formula: '', worked: [], source: '' },
}

function around(passes: readonly KnownPass[], more: Partial<Surroundings> = {}): Surroundings {
  return {
    operation: { key: 'hone', stage: 'machining', features: bores }, features: [...bores, piston, gap], requirements: [], passes,
    placed: [...bores, piston, gap].map(({ place }) => ({ place, partId: place })), bore: 4 * inch, ...more,
  }
}

const first: TakenValue = {
  definition: hole(1), point: 'top/thrust', value: 4.03 * inch, passNumber: 1, isSetOnMate: false, state: [], by: 'Ada', standardUncertainty: tenth / 2, settingSize: null,
  warmth: null, opensPass: true,
}
const rules = (taken: Partial<TakenValue>, surroundings = around([])) =>
  doubtsOfTaken({ ...first, ...taken }, surroundings, 'inch').map(({ rule, outcome }) => `${rule} ${outcome}`)

describe('a value typed at a step', () => {
  it('is not doubted when nothing speaks against it', () => expect(rules({})).toEqual([]))

  it('is held against the others of its bore, and before there are any against the bores beside it', () => {
    expect(rules({ value: 4.055 * inch, point: 'bottom/thrust' }, around([pass(hole(1), [4.03 * inch])]))).toContain('thimble-turn ask')
    expect(rules({ value: 4.055 * inch }, around([pass(hole(2), [4.03 * inch])]))).toContain('thimble-turn ask')
    expect(rules({ value: 4.055 * inch }, around([pass(hole(2), [4.03 * inch], { isVoid: true })]))).not.toContain('thimble-turn ask')
  })
  it('with the sign turned round on its setting size is asked about', () => {
    const known = around([pass(hole(1), [null, 4.0296 * inch])])
    expect(rules({ value: 4.0304 * inch, settingSize: 4.03 * inch }, known)).toEqual(['sign ask'])
  })
  it('smaller than before the cut is asked about, unless it was coated', () => {
    const known = around([pass(hole(1), [4.031 * inch], { operationKey: 'measure-block' })])
    expect(rules({ passNumber: 2 }, known)).toEqual(['growth ask'])
    expect(rules({ passNumber: 2, state: ['coated'] }, known)).toEqual([])
  })
  it('that leaves its mate no room is blocked where the fit is judged, and nowhere else', () => {
    const known = [pass(piston, [4.031 * inch])]
    expect(rules({}, around(known, { requirements: [fit] }))).toEqual(['pair block'])
    expect(rules({}, around(known))).toEqual([])
  })
  it('of a ring gap goes by the bore', () => {
    expect(rules({ definition: gap, point: 'square/gap', value: 180 * tenth })).toEqual([])
    expect(rules({ definition: gap, point: 'square/gap', value: 18 * tenth })).toEqual(['range ask'])
  })
  it('without a nominal is asked about when its point seems displaced, never blocked', () => {
    const end = { ...fit, measurand: { kind: 'feature', feature: gap, reducer: 'each' } } as const
    const found = doubtsOfTaken(
      { ...first, definition: gap, point: 'square/gap', value: 200 * tenth }, around([], { requirements: [end] }), 'inch')
    expect(found).toMatchObject([])
    const gross = doubtsOfTaken(
      { ...first, definition: gap, point: 'square/gap', value: 500 * tenth }, around([], { requirements: [end] }), 'inch')
    expect(gross).toMatchObject([{ outcome: 'ask', sentence: expect.stringContaining('usual value') }])
  })
})

describe('a set', () => {
  const same = 4.03 * inch
  it('that is all alike is asked about once, when its last value completes it', () => {
    const known = [pass(hole(1), [same, same, same, same]), pass(hole(2), [same, same, same, null])]
    expect(rules({ definition: hole(2), point: 'top/pin' }, around(known))).toEqual(['copied ask'])
    expect(rules({ definition: hole(2), point: 'bottom/pin' }, around([known[0]!, pass(hole(2), [same, same])]))).toEqual([])
  })
  it('of one figure eight times in a row is asked about at the eighth', () => {
    const more = [hole(1), hole(2), hole(3)]
    const known = [pass(hole(1), [same, same, same, same]), pass(hole(2), [same, same, same, null])]
    const open = around(known, { operation: { key: 'hone', stage: 'machining', features: more }, features: more })
    expect(rules({ definition: hole(2), point: 'top/pin' }, open)).toEqual(['copied ask'])
  })
  it('that moved as a whole with nothing machined asks for the zero', () => {
    const before = bores.map((one) => pass(one, [same, same + tenth, same, same]))
    const moved = same + 7 * tenth
    const now = [pass(hole(1), [moved, moved + tenth, moved, moved], { number: 2 }), pass(hole(2), [moved, moved, moved, null], { number: 2 })]
    const taken = { definition: hole(2), point: 'top/pin', passNumber: 2, value: moved } as const
    const inspected = { operation: { key: 'hone', stage: 'inspection' as const, features: bores } }
    expect(rules(taken, around([...before, ...now], inspected))).toEqual(['offset ask'])
    expect(rules(taken, around([...before, ...now]))).toEqual([])
  })
})

describe('a part that was not soaked', () => {
  const warmth = { part: 26_000, gauge: 22_000, material: 'grey-iron' } as const
  it('is asked about at the first value of its pass', () => {
    expect(rules({ warmth })).toEqual(['soak ask'])
    expect(rules({ warmth, opensPass: false })).toEqual([])
  })
  it('is told when expansion alone takes a good part of the tolerance and nothing is corrected', () => {
    const judged = around([], { requirements: [fit] })
    expect(rules({ warmth: { part: 26_000, gauge: 24_500, material: null } }, judged)).toEqual(['expansion ask'])
    expect(rules({ warmth: { ...warmth, gauge: 24_500 } }, judged)).toEqual([])
  })
})

describe('what a second person reads of the same thing', () => {
  const inspecting = { operation: { key: 'measure', stage: 'inspection' as const, features: [hole(1)] } }
  const adas = (value: number, more: Partial<KnownPass> = {}) => pass(hole(1), [4.03 * inch + value * tenth], { operationKey: 'measure', ...more })
  // Two gauges of u = half a tenth: 1.5 times the root of 1² + 1² tenths is 2.12 tenths.
  const bens = (value: number, known: readonly KnownPass[], more: Partial<TakenValue> = {}, where: Partial<Surroundings> = inspecting) =>
    rules({ by: 'Ben', passNumber: 2, value: 4.03 * inch + value * tenth, ...more }, around(known, where)).filter((rule) => rule.startsWith('agreement'))

  it('agrees within one and a half times their joint uncertainty; else a third reading is asked for', () => {
    expect(bens(2, [adas(0)])).toEqual([])
    expect(bens(3, [adas(0)])).toEqual(['agreement ask'])
    expect(bens(3, [adas(0)], { standardUncertainty: 2 * tenth })).toEqual([])
  })
  it('is not asked of whoever read it before, of another point, state or step, nor of a pass that is void', () => {
    expect(bens(3, [adas(0)], { by: 'Ada' })).toEqual([])
    expect(bens(3, [adas(0)], { point: 'bottom/thrust' })).toEqual([])
    expect(bens(3, [adas(0)], { state: ['torque-plate-on'] })).toEqual([])
    expect(bens(3, [adas(0, { operationKey: 'receive' })])).toEqual([])
    expect(bens(3, [adas(0, { isVoid: true })])).toEqual([])
  })
  it('is not asked where metal may have come off between', () => {
    expect(bens(3, [adas(0)], {}, { operation: { ...inspecting.operation, stage: 'machining' } })).toEqual([])
    const filed = { definition: gap, point: 'square/gap', value: 183 * tenth } as const
    const gaps = [pass(gap, [180 * tenth], { operationKey: 'measure' })]
    expect(bens(0, gaps, filed, { operation: { ...inspecting.operation, stage: 'fitting' } })).toEqual([])
    expect(bens(0, gaps, filed)).toEqual(['agreement ask'])
    const honed = [adas(0), adas(3, { number: 2, operationKey: 'hone' })]
    expect(bens(6, honed, { passNumber: 3 })).toEqual([])
  })
  it('that bears out either of two who differ settles it', () => {
    const differing = (third: number, by: string) => {
      const second = { ...adas(6, { number: 2 }), readings: adas(6).readings.map((one) => ({ ...one, id: 'second', by: 'Ben' })) }
      return bens(third, [adas(0), second], { by, passNumber: 3 })
    }
    expect(differing(0, 'Ada')).toEqual([])
    expect(differing(6, 'Cleo')).toEqual([])
    expect(differing(3, 'Cleo')).toEqual(['agreement ask'])
  })
  it('is compared at 20 °C where that is known', () => {
    const warm = { part: 30_000, gauge: 20_000, material: 'grey-iron' } as const
    // 4.03 in of iron is some four tenths larger at 30 °C
    expect(bens(4, [adas(0)], { warmth: warm, opensPass: false })).toEqual([])
    expect(bens(0, [adas(0)], { warmth: warm, opensPass: false })).toEqual(['agreement ask'])
  })
})
