import { describe, expect, it } from 'vitest'
import { bore, mainBearing, mainHousing, mainJournal, pinBore, pinDiameter, pistonWeight, skirt } from '../features/references.ts'
import { featureKey } from '../features/feature.ts'
import type { FeatureReference } from '../features/feature.ts'
import { featureOf, indexFeatures } from '../features/feature-index.ts'
import type { FeaturePass } from '../measuring/pass.ts'
import { plan } from '../plan/plan.ts'
import { inches, planInput, v8, v8Parts } from '../testing/engines.ts'
import { suggestions } from './suggestions.ts'
import { targetOf } from './pairing-figures.ts'

const sheet = plan({ ...planInput(v8, v8Parts), duty: 'hard-boost' })
const index = indexFeatures(sheet.features)
const placed = [...new Set(sheet.features.map(({ place }) => place))].map((place) => ({ place, partId: `part of ${place}` }))
const tenth = inches(0.0001)
const target = (key: string) => targetOf(sheet.requirements.find((one) => one.key === key)!)!

function passOf(reference: FeatureReference, value: number): FeaturePass {
  return {
    partId: `part of ${reference.place}`, feature: reference.feature, number: 1, standardUncertainty: 100,
    state: ['torque-plate-on', 'caps-torqued', 'shells-in', 'soaked'], setOn: null,
    readings: featureOf(index, reference).points.map(({ key }) => ({ id: `${featureKey(reference)}${key}`, point: key, value })),
  }
}

/** Bores and pistons off their nominal sizes by so many tenths; a piston that fits its bore is `target` smaller. */
function boresAndPistons(bores: readonly number[], pistons: readonly number[]): FeaturePass[] {
  const size = inches(4.03)
  return [
    ...bores.map((off, at) => passOf(bore(at + 1), size + off * tenth)),
    ...pistons.map((off, at) => passOf(skirt(at + 1), size - target('piston-in-bore/1') + off * tenth)),
  ]
}

describe('suggestions for parts to change places', () => {
  it('put every piston where its clearance is nearest to the target, the worst first', () => {
    const [suggestion, ...others] = suggestions(sheet, { placed, passes: boresAndPistons([0, 0, 6, 0, 0], [0, 0, 0, 0, 6]) })
    expect(others).toEqual([])
    expect(suggestion).toMatchObject({
      kind: 'piston',
      before: { worstDistance: 6 * tenth, sumOfDistances: 12 * tenth },
      after: { worstDistance: 0, sumOfDistances: 0 },
    })
    expect(suggestion!.moves).toEqual([
      { partId: 'part of piston/5', from: 'piston/5', to: 'piston/3' },
      { partId: 'part of piston/3', from: 'piston/3', to: 'piston/5' },
    ])
    const third = suggestion!.fits.find(({ requirement }) => requirement === 'piston-in-bore/3')!
    expect(third.before.least - third.after.least).toBe(6 * tenth)
    expect(suggestion!.after.leastMargin).toBeGreaterThan(suggestion!.before.leastMargin)
  })

  it('leave alone what cannot be bettered by a tenth, and pistons that are alike', () => {
    expect(suggestions(sheet, { placed, passes: boresAndPistons([0, 3, 0], [0, 0, 0]) })).toEqual([])
    expect(suggestions(sheet, { placed, passes: boresAndPistons([0, 0.5, 0], [0, 0, 0.5]) })).toEqual([])
    expect(suggestions(sheet, { placed, passes: [] })).toEqual([])
  })

  it('never trade one conflict for another: a piston whose pin would not go into it stays', () => {
    const passes = boresAndPistons([0, 0, 6], [6, 0, 0])
    const pinFit = target('pin-in-piston/1')
    const boss = inches(0.9277)
    const bosses = [1, 2, 3].map((cylinder) => passOf(pinBore(cylinder), boss + (cylinder === 3 ? 20 * tenth : 0)))
    const pins = [1, 2, 3].map((cylinder) => passOf(pinDiameter(cylinder), boss - pinFit + (cylinder === 3 ? 20 * tenth : 0)))
    expect(suggestions(sheet, { placed, passes })).toHaveLength(1)
    expect(suggestions(sheet, { placed, passes: [...passes, ...bosses, ...pins] }).map(({ kind }) => kind)).not.toContain('piston')
  })

  it('are the same whatever parts weigh: a set is matched wherever its parts sit', () => {
    const passes = boresAndPistons([0, 0, 6, 0, 0, 0, 0, 0], [0, 0, 0, 0, 6, 0, 0, 0])
    const weights = [1, 2, 3, 4, 5, 6, 7, 8].map((cylinder) => passOf(pistonWeight(cylinder), 520_000 + cylinder * 900))
    expect(suggestions(sheet, { placed, passes: [...passes, ...weights] })).toEqual(suggestions(sheet, { placed, passes }))
  })

  it('wait for bores that are still to be honed, each to its own piston', () => {
    const passes = boresAndPistons([0, 0, 6], [6, 0, 0])
    const ahead = new Map([1, 2, 3].map((cylinder) => [featureKey(bore(cylinder)), 'Hone the bores']))
    expect(suggestions(sheet, { placed, passes }, ahead)).toEqual([])
  })

  it('take pins to the pistons whose bosses they suit', () => {
    const boss = inches(0.9277)
    const passes = [2, 0, -2].flatMap((off, at) => [
      passOf(pinBore(at + 1), boss + off * tenth),
      passOf(pinDiameter(at + 1), boss - target('pin-in-piston/1') - off * tenth),
    ])
    expect(suggestions(sheet, { placed, passes })).toMatchObject([{ kind: 'piston-pin', after: { worstDistance: 0 } }])
  })

  it('foretell shells in another housing by their walls, and have them measured again there', () => {
    const housing = inches(2.641)
    const journal = inches(2.45)
    const clearance = target('main-bearing/1')
    // Journal 1 is 4 tenths small and journal 2 has the shells with the walls 2 tenths thicker; housing 2 is 3 tenths large.
    const passes = [
      passOf(mainHousing(1), housing), passOf(mainJournal(1), journal - 4 * tenth), passOf(mainBearing(1), journal + clearance),
      passOf(mainHousing(2), housing + 3 * tenth), passOf(mainJournal(2), journal + 3 * tenth),
      passOf(mainBearing(2), journal + clearance + 3 * tenth - 4 * tenth),
    ]
    const [suggestion] = suggestions(sheet, { placed, passes })
    expect(suggestion).toMatchObject({
      kind: 'main-bearing', before: { worstDistance: 4 * tenth }, after: { worstDistance: 0 },
      measureAgain: ['Main bearing 1 in place', 'Main bearing 2 in place'].map((title) => expect.stringContaining(title.slice(0, 14))),
    })
  })
})
