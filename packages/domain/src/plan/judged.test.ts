import { describe, expect, it } from 'vitest'
import { featureKey } from '../features/feature.ts'
import type { FeatureReference } from '../features/feature.ts'
import { pinDiameter, smallEnd } from '../features/references.ts'
import { judge } from '../judging/judge.ts'
import type { FeaturePass } from '../measuring/pass.ts'
import { measurementsOf } from '../measuring/pass.ts'
import { inches, planInput, v6, v8Parts } from '../testing/engines.ts'
import { plan } from './plan.ts'
import type { Plan } from './plan-types.ts'

const boosted = plan(planInput(v6, v8Parts, { duty: 'hard-boost' }))
const street = plan(planInput(v6, v8Parts))

/** A full pass with one value at every point. */
function passOf(
  of: Plan,
  reference: FeatureReference,
  value: number,
  uncertainty: number,
  setOn: FeatureReference | null,
): FeaturePass {
  const definition = of.features.find((feature) => featureKey(feature) === featureKey(reference))
  if (definition === undefined) throw new Error(`No feature ${featureKey(reference)}`)
  return {
    partId: reference.place,
    feature: reference.feature,
    number: 1,
    standardUncertainty: uncertainty / 2,
    state: [],
    setOn: setOn === null ? null : { partId: setOn.place, feature: setOn.feature },
    readings: definition.points.map(({ key }) => ({
      id: `${featureKey(reference)}@${key}`,
      point: key,
      value,
    })),
  }
}

function verdict(of: Plan, passes: readonly FeaturePass[]) {
  const requirement = of.requirements.find(({ key }) => key === 'pin-in-rod/1')
  if (requirement === undefined) throw new Error('No pin in rod')
  const placed = [smallEnd(1), pinDiameter(1)].map(({ place }) => ({ place, partId: place }))
  return judge(requirement, measurementsOf(placed, passes), of.features)
}

/** By a pin-fit gauge set on the pin itself, U = 0.00005 in: it reads the clearance. */
const byPinFitGauge = (of: Plan, clearance: number) =>
  verdict(of, [passOf(of, smallEnd(1), inches(clearance), inches(0.00005), pinDiameter(1))])

// Common practice, no source.
describe('a pin bushing of a boosted engine', () => {
  it('read at 0.0004 in is outside: take 0.0003 in off the bushing, on diameter', () => {
    const found = byPinFitGauge(boosted, 0.0004)
    expect(found).toMatchObject({ kind: 'outside', side: 'low' })
    expect(found.remedy).toMatchObject({
      action: 'hone',
      amount: inches(0.0003),
      reaches: 'target',
      feature: smallEnd(1),
    })
    expect(found.remedy?.sentence).toContain('on diameter')
  })

  it('honed to 0.0007 in is within by the gauge set on the pin', () => {
    expect(byPinFitGauge(boosted, 0.0007).kind).toBe('within')
  })

  it('of the same 0.0007 in is not proven by micrometer and bore gauge, U = 0.00018 in', () => {
    const each = inches(0.00018) / Math.SQRT2
    expect(
      verdict(boosted, [
        passOf(boosted, smallEnd(1), inches(0.9277), each, null),
        passOf(boosted, pinDiameter(1), inches(0.927), each, null),
      ]).kind,
    ).toBe('not-proven')
  })

  it('of 0.0004 in is within on an unboosted engine', () => {
    expect(byPinFitGauge(street, 0.0004).kind).toBe('within')
  })
})
