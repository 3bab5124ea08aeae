import { describe, expect, it } from 'vitest'
import type { FeatureDefinition } from '../features/feature.ts'
import { measurementsOf, type FeaturePass } from '../measuring/pass.ts'
import { correctReading, type Warmth } from '../temperature/correct-reading.ts'
import { judge } from './judge.ts'
import type { Limits, Requirement } from './requirement.ts'

const tenth = 2_540
const inch = 25_400_000
const gap: FeatureDefinition = {
  place: 'oil-ring/1', feature: 'rail-gap', title: 'Oil rails 1 end gap', shape: 'gap', quantity: 'length', nominal: null, state: [],
  points: ['upper', 'lower'].map((station) => ({ key: station, station, axis: 'gap' })),
}
const bore: FeatureDefinition = {
  ...gap, place: 'block', feature: 'bore-1', title: 'Bore 1', shape: 'hole', nominal: 4 * inch,
  points: [{ key: 'top', station: 'top', axis: 'thrust' }],
}
const skirt: FeatureDefinition = { ...bore, place: 'piston/1', feature: 'skirt', title: 'Piston 1', shape: 'shaft' }
const placed = [{ place: 'oil-ring/1', partId: 'o' }, { place: 'block', partId: 'b' }, { place: 'piston/1', partId: 'p' }]

function requirement(measurand: Requirement['measurand'], limits: Partial<Limits>): Requirement {
  return {
    key: 'fit/1', fit: 'fit', title: 'A fit', position: 1, quantity: 'length', measurand,
    limits: { low: null, high: null, target: null, adviceLow: null, adviceHigh: null, ...limits },
    guard: { kind: 'none' }, critical: false,
    remedy: { low: { action: 'file', feature: gap, words: 'A few strokes.' }, high: null },
    why: { rule: 'fit', revision: 1, level: 'starter', formula: '', worked: [], source: '' },
  }
}

function pass(partId: string, feature: string, readings: FeaturePass['readings'], more: Partial<FeaturePass> = {}): FeaturePass {
  return { partId, feature, number: 1, standardUncertainty: 0, state: [], setOn: null, readings, ...more }
}

describe('feelers', () => {
  const least = requirement({ kind: 'feature', feature: gap, reducer: 'each' }, { low: 150 * tenth, high: 400 * tenth })
  const judged = (upper: readonly [number, number | null], lower: readonly [number, number | null], of = least) =>
    judge(of, measurementsOf(placed, [pass('o', 'rail-gap', [upper, lower].map(([enters, stops], index) => ({
      id: `r${index}`, point: index === 0 ? 'upper' : 'lower', value: enters * tenth,
      blades: { stops: stops === null ? null : stops * tenth },
    })))]), [gap, bore, skirt])

  it('prove a minimum at every point by the blade equal to it', () => {
    expect(judged([150, 160], [180, 190])).toMatchObject({ kind: 'within', least: 150 * tenth, greatest: 190 * tenth, probability: null })
    expect(judged([140, 160], [180, 190])).toMatchObject({ kind: 'not-proven', side: 'low' })
  })
  it('that tried no thicker blade prove no maximum', () => {
    expect(judged([150, null], [180, 190]).kind).toBe('not-proven')
    expect(judged([150, null], [180, null], requirement(least.measurand, { low: 150 * tenth })).kind).toBe('within')
  })
  it('file no further than is surely needed', () => {
    const tight = judged([130, 140], [180, 190])
    expect(tight).toMatchObject({ kind: 'outside', side: 'low' })
    expect(judge(requirement(least.measurand, { low: 150 * tenth, target: 170 * tenth }), measurementsOf(placed, [pass('o', 'rail-gap', [
      { id: '1', point: 'upper', value: 130 * tenth, blades: { stops: 140 * tenth } },
      { id: '2', point: 'lower', value: 180 * tenth, blades: { stops: 190 * tenth } },
    ])]), [gap, bore, skirt]).remedy?.amount).toBe(30 * tenth)
  })
  it('say nothing where a size is reckoned with', () => {
    const verdict = judged([150, 160], [180, 190], requirement({ kind: 'feature', feature: gap, reducer: 'mean' }, { low: 1 }))
    expect(verdict).toMatchObject({ kind: 'not-measured', advice: expect.stringContaining('two blades and no size') })
  })
})

describe('a pass whose gauge drifted', () => {
  it('is not measured, whatever an earlier one said', () => {
    const size = requirement({ kind: 'feature', feature: bore, reducer: 'each' }, { low: 4 * inch })
    const passes = [
      pass('b', 'bore-1', [{ id: '1', point: 'top', value: 4 * inch }]),
      pass('b', 'bore-1', [{ id: '2', point: 'top', value: 4 * inch }], { number: 2, isVoid: true }),
    ]
    expect(judge(size, measurementsOf(placed, passes), [bore])).toMatchObject({
      kind: 'not-measured', missing: ['block#bore-1@top'], advice: expect.stringContaining('zero had drifted'),
    })
  })
})

describe('temperature', () => {
  const warm: Warmth = { part: 30_000, gauge: 20_000, material: 'grey-iron' }
  const read = 4 * inch
  const size = requirement({ kind: 'feature', feature: bore, reducer: 'each' }, { low: read })
  const judged = (warmth: Warmth | null, of: Requirement = size) => judge(of, measurementsOf(placed, [
    pass('b', 'bore-1', [{ id: '1', point: 'top', value: read }], { warmth }),
    pass('p', 'skirt', [{ id: '2', point: 'top', value: read - 100 * tenth }]),
  ]), [gap, bore, skirt])

  it('brings a size to 20 °C by the material of its part, and says so', () => {
    // L(1 + 0)/(1 + 11.4e-6 · 10), rounded: 101 600 000 / 1.000114
    expect(correctReading(read, warm)).toBe(101_588_419)
    const verdict = judged(warm)
    expect(verdict).toMatchObject({ kind: 'outside', least: 101_588_419 })
    expect(verdict.advice).toBe('Bore 1 is corrected to 20 °C by −0.00046 in: part 30.0 °C, gauge 20.0 °C, grey iron.')
  })
  it('of part and gauge alike cancels for like materials, and nothing is corrected where nothing was told', () => {
    expect(Math.abs(correctReading(read, { part: 25_000, gauge: 25_000, material: 'grey-iron' }) - read)).toBeLessThan(tenth / 20)
    expect(correctReading(read, { part: 20_000, gauge: 20_000, material: 'aluminium-2618' })).toBe(read)
    expect(judged(null)).toMatchObject({ kind: 'within', least: read, advice: null })
  })
  it('counts in a clearance on the side that was warm', () => {
    const fit = requirement({ kind: 'clearance', hole: bore, shaft: skirt, pairing: 'overall' }, { low: 0 })
    expect(judged(warm, fit)).toMatchObject({ least: 100 * tenth - 11_581, advice: expect.stringContaining('Bore 1 is corrected') })
  })
})
