import { describe, expect, it } from 'vitest'
import type { FeatureDefinition } from '../features/feature.ts'
import { indexFeatures } from '../features/feature-index.ts'
import { remedyFor } from './remedy.ts'
import type { Limits, Measurand, RemedyRule, Requirement } from './requirement.ts'

const tenth = 2_540

function feature(place: string, title: string, shape: FeatureDefinition['shape']): FeatureDefinition {
  return { place, feature: 'f', title, shape, quantity: 'length', nominal: null, state: [], points: [] }
}
const smallEnd = feature('rod/1', 'Small end of rod 1', 'hole')
const pin = feature('piston-pin/1', 'Pin 1', 'shaft')
const gap = feature('top-ring/1', 'Top ring 1', 'gap')
const deck = feature('block', 'Left deck', 'other')
const features = indexFeatures([smallEnd, pin, gap, deck])

function asked(measurand: Measurand, limits: Partial<Limits>, low: RemedyRule | null, high: RemedyRule | null): Requirement {
  return {
    key: 'k', fit: 'k', title: 'k', position: 1, quantity: 'length', measurand,
    limits: { low: null, high: null, target: null, adviceLow: null, adviceHigh: null, ...limits },
    guard: { kind: 'none' }, critical: false, remedy: { low, high },
    why: { rule: 'k', revision: 1, level: 'starter', formula: '', worked: [], source: '' },
  }
}
const rule = (action: RemedyRule['action'], on: FeatureDefinition | null, words = ''): RemedyRule =>
  ({ action, feature: on, words })
const clearance = { kind: 'clearance', hole: smallEnd, shaft: pin, pairing: 'overall' } as const
const boosted = { low: 6 * tenth, high: 10 * tenth, target: 7 * tenth }
const at = (least: number, greatest: number, side: 'low' | 'high' | 'both') =>
  ({ least: least * tenth, greatest: greatest * tenth, guardBand: 0, side })

describe('a cut', () => {
  const fit = asked(clearance, boosted, rule('hone', smallEnd, 'Let it cool first.'), rule('replace', smallEnd))
  it('takes off what is missing to the target, on diameter', () => {
    expect(remedyFor(fit, at(4, 4, 'low'), features, 'inch')).toEqual({
      action: 'hone', amount: 3 * tenth, feature: smallEnd, reaches: 'target',
      sentence: 'Hone 0.0003 in off small end of rod 1, on diameter, to reach 0.0007 in. Let it cool first.',
    })
  })
  it('is worded in millimetres for who reads those', () => {
    expect(remedyFor(fit, at(4, 4, 'low'), features, 'millimetre').sentence)
      .toBe('Hone 0.0076 mm off small end of rod 1, on diameter, to reach 0.0178 mm. Let it cool first.')
  })
  it('says when a wide place is past the target already, but good', () => {
    const remedy = remedyFor(fit, at(4, 9, 'low'), features, 'inch')
    expect(remedy.reaches).toBe('limits')
    expect(remedy.sentence).toContain('Not every place can reach the target, because metal only comes off')
  })
  it('says when it cannot mend the fit, because metal only comes off', () => {
    const remedy = remedyFor(fit, at(4, 11, 'low'), features, 'inch')
    expect(remedy.reaches).toBe('neither')
    expect(remedy.sentence).toContain('the largest value cannot be brought back inside the limits')
  })
  it('off the shaft opens a clearance as well', () => {
    const ground = asked(clearance, boosted, rule('grind', pin), null)
    expect(remedyFor(ground, at(4, 4, 'low'), features, 'inch').sentence)
      .toBe('Grind 0.0003 in off pin 1, on diameter, to reach 0.0007 in.')
  })
  it('opens a ring gap to its one limit, and the guard band with it', () => {
    const end = asked({ kind: 'feature', feature: gap, reducer: 'each' }, { low: 180 * tenth }, rule('file', gap), null)
    expect(remedyFor(end, at(160, 160, 'low'), features, 'inch')).toMatchObject({
      amount: 20 * tenth, reaches: 'limits', sentence: 'File 0.0020 in off top ring 1 to reach 0.0180 in.' })
    expect(remedyFor(end, { ...at(160, 160, 'low'), guardBand: 2 * tenth }, features, 'inch').amount).toBe(22 * tenth)
  })
  it('makes an out-of-round hole round at the cost of size', () => {
    const round = asked(
      { kind: 'feature', feature: smallEnd, reducer: 'out-of-round' }, { high: 5 * tenth, target: 3 * tenth },
      null, rule('hone', smallEnd))
    expect(remedyFor(round, at(8, 8, 'high'), features, 'inch')).toMatchObject({
      amount: 5 * tenth, reaches: 'target',
      sentence: 'Hone 0.0005 in off small end of rod 1 where it has most metal, on diameter, to bring the difference down to 0.0003 in.',
    })
  })
  it('goes by the factor of its term in a sum', () => {
    const sum: Measurand = { kind: 'sum', constant: 0, terms: [{ feature: deck, factor: 2, reducer: 'mean' }] }
    const low = asked(sum, { low: 0, high: 20 * tenth }, null, rule('deck', deck))
    expect(remedyFor(low, at(30, 30, 'high'), features, 'inch')).toMatchObject({ amount: 10 * tenth, reaches: 'limits' })
  })
  it('that would move the value the wrong way has no amount and says why', () => {
    const loose = asked(
      { kind: 'feature', feature: smallEnd, reducer: 'each' }, boosted, null,
      rule('face', smallEnd, 'Cut the cap faces and hone it again.'))
    expect(remedyFor(loose, at(12, 12, 'high'), features, 'inch')).toEqual({
      action: 'face', amount: null, feature: smallEnd, reaches: 'neither',
      sentence: 'Face small end of rod 1: 0.0005 in less is wanted to reach 0.0007 in. Metal only comes off, so a cut alone cannot give it. Cut the cap faces and hone it again.',
    })
  })
})

describe('what cannot be cut', () => {
  it('is changed for another part, with the difference that is wanted', () => {
    const fit = asked(clearance, boosted, rule('hone', smallEnd), rule('replace', smallEnd, 'A new bushing goes in.'))
    expect(remedyFor(fit, at(12, 12, 'high'), features, 'inch')).toEqual({
      action: 'replace', amount: null, feature: smallEnd, reaches: 'neither',
      sentence: 'Change the part (small end of rod 1): 0.0005 in less is wanted to reach 0.0007 in. A new bushing goes in.',
    })
    expect(remedyFor(fit, at(4, 12, 'both'), features, 'inch').action).toBe('replace')
  })
  it('is left to the owner where no remedy is set', () => {
    expect(remedyFor(asked(clearance, boosted, null, null), at(12, 12, 'high'), features, 'inch')).toMatchObject({
      action: 'investigate', amount: null })
  })
})
