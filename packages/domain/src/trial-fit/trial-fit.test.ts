import { describe, expect, it } from 'vitest'
import { bore, pinDiameter, skirt, smallEnd } from '../features/references.ts'
import { indexFeatures, featureOf } from '../features/feature-index.ts'
import { featureKey, type FeatureReference } from '../features/feature.ts'
import { measurementsOf } from '../measuring/pass.ts'
import type { FeaturePass } from '../measuring/pass.ts'
import { plan } from '../plan/plan.ts'
import { inches, planInput, v6, v8Parts } from '../testing/engines.ts'
import { trialFit } from './trial-fit.ts'
import type { TrialFitContext } from './trial-fit-types.ts'

const sheet = plan({ ...planInput(v6, v8Parts), duty: 'mild-boost' })
const index = indexFeatures(sheet.features)

function passOf(reference: FeatureReference, value: number): FeaturePass {
  return {
    partId: reference.place, feature: reference.feature, number: 1, standardUncertainty: 500,
    state: ['torque-plate-on', 'caps-torqued', 'shells-in', 'soaked'], setOn: null,
    readings: featureOf(index, reference).points.map(({ key }) => ({ id: `${reference.place}${key}`, point: key, value })),
  }
}

function forecastWith(passes: readonly FeaturePass[], context: Partial<TrialFitContext> = {}) {
  const placed = [...new Set(sheet.features.map(({ place }) => place))].map((place) => ({ place, partId: place }))
  return trialFit(sheet, measurementsOf(placed, passes), undefined, {
    stillToCut: new Map(), isConceded: () => false, ...context,
  })
}

describe('the trial fit', () => {
  it('forecasts from the drawing alone, says what it assumed, and leaves form unknown', () => {
    const pin = forecastWith([]).lines.find(({ requirement }) => requirement === 'pin-in-rod/1')!
    expect(pin.basis).toBe('nominal')
    expect(pin.assumed).toHaveLength(2)
    expect(pin.verdict.kind).not.toBe('not-measured')
    const taper = forecastWith([]).lines.find(({ requirement }) => requirement.startsWith('bore-taper/'))!
    expect(taper).toMatchObject({ basis: 'unknown', verdict: { kind: 'not-measured' } })
  })

  it('names a conflict from a measured pin and a bushing still on the drawing, first and with its remedy', () => {
    const nominalBushing = featureOf(index, smallEnd(2)).nominal!
    const { lines, counts } = forecastWith([passOf(pinDiameter(2), nominalBushing - inches(0.0004))])
    const line = lines.find(({ requirement }) => requirement === 'pin-in-rod/2')!
    expect(line.basis).toBe('partly-nominal')
    expect(line.verdict).toMatchObject({ kind: 'outside', side: 'low', remedy: { action: 'hone', amount: inches(0.0003) } })
    expect(lines.slice(0, counts.conflict).map(({ requirement }) => requirement)).toContain('pin-in-rod/2')
  })

  it('offers the cheapest remedy first', () => {
    const { lines, counts } = forecastWith([
      passOf(pinDiameter(1), featureOf(index, smallEnd(1)).nominal! - inches(0.0004)),
      passOf(skirt(3), featureOf(index, skirt(3)).nominal! - inches(0.02)),
    ])
    const ranks = lines.slice(0, counts.conflict).map(({ remedyRank }) => remedyRank ?? 9)
    expect(ranks.length).toBeGreaterThan(1)
    expect(ranks).toEqual([...ranks].sort((one, other) => one - other))
  })

  it('judges what is measured as the bench does, guard band and all', () => {
    const bushing = inches(0.9277)
    const { lines } = forecastWith([passOf(smallEnd(4), bushing), passOf(pinDiameter(4), bushing - inches(0.0007))])
    const line = lines.find(({ requirement }) => requirement === 'pin-in-rod/4')!
    expect(line).toMatchObject({ basis: 'measured', assumed: [] })
    expect(line.verdict.guardBand).toBeGreaterThan(0)
  })

  it('calls no conflict what a machine still ahead will cut right, and says where; metal that is gone stays a conflict', () => {
    const piston = featureOf(index, skirt(1)).nominal!
    const stillToCut = new Map([[featureKey(bore(1)), 'Hone the bores']])
    const lineWith = (boreSize: number) => forecastWith([passOf(skirt(1), piston), passOf(bore(1), boreSize)], { stillToCut })
      .lines.find(({ requirement }) => requirement === 'piston-in-bore/1')!
    expect(lineWith(piston - inches(0.03))).toMatchObject({ standing: 'to-be-cut', cutAt: 'Hone the bores', verdict: { side: 'low' } })
    expect(lineWith(piston + inches(0.02))).toMatchObject({ standing: 'conflict', cutAt: null, verdict: { side: 'high' } })
  })

  it('counts as fitting what the owner let pass', () => {
    const passes = [passOf(smallEnd(4), inches(0.9277)), passOf(pinDiameter(4), inches(0.9277) - inches(0.0003))]
    const standing = (context: Partial<TrialFitContext>) => forecastWith(passes, context)
      .lines.find(({ requirement }) => requirement === 'pin-in-rod/4')!.standing
    expect(standing({})).toBe('conflict')
    expect(standing({ isConceded: ({ requirement }) => requirement === 'pin-in-rod/4' })).toBe('fits')
  })

  it('counts every line once', () => {
    const { lines, counts } = forecastWith([])
    expect(Object.values(counts).reduce((sum, count) => sum + count)).toBe(lines.length)
  })
})
