import { describe, expect, it } from 'vitest'
import { shortBlock } from '../index.ts'
import { featureKey } from '../features/feature.ts'
import { judge } from '../judging/judge.ts'
import { measurementsOf } from '../measuring/pass.ts'
import { plan } from '../plan/plan.ts'
import { planInput, v8, v8Parts } from '../testing/engines.ts'

const made = plan(planInput(v8, v8Parts))

function verdictOn(key: string, value: number) {
  const requirement = made.requirements.find((one) => one.key === key)
  if (requirement?.measurand.kind !== 'feature') throw new Error(`no ${key}`)
  const { feature } = requirement.measurand
  const points = made.features.find((one) => featureKey(one) === featureKey(feature))?.points ?? []
  const pass = {
    partId: 'B1', feature: feature.feature, number: 1, standardUncertainty: 10, state: [], setOn: null,
    readings: points.map(({ key: point }) => ({ id: point, point, value })),
  }
  return judge(requirement, measurementsOf([{ place: 'block', partId: 'B1' }], [pass]), made.features, {
    coverageFactor: 2, unit: 'millimetre',
  })
}

// From memory: 20 to 60 degrees between the marks, Ra 0.25 to 0.6 µm for rings in general.
describe('the finish of a bore is judged like a size', () => {
  it('its crosshatch between 20 and 60 degrees', () => {
    expect(verdictOn('bore-crosshatch/1', 45_000).kind).toBe('within')
    expect(verdictOn('bore-crosshatch/1', 20_000).kind).toBe('within')
    expect(verdictOn('bore-crosshatch/1', 19_000)).toMatchObject({ kind: 'outside', side: 'low' })
    expect(verdictOn('bore-crosshatch/1', 61_000)).toMatchObject({ kind: 'outside', side: 'high' })
  })

  it('its roughness Ra between 0.25 and 0.6 µm', () => {
    expect(verdictOn('bore-roughness/8', 400).kind).toBe('within')
    expect(verdictOn('bore-roughness/8', 240)).toMatchObject({ kind: 'outside', side: 'low' })
    expect(verdictOn('bore-roughness/8', 610)).toMatchObject({ kind: 'outside', side: 'high' })
  })

  it('at a step of its own, after honing and before the wash for measuring', () => {
    const step = made.operations.find(({ key }) => key === 'bore-finish')
    expect(step?.after).toEqual(['hone-bores'])
    expect(step?.requirements).toHaveLength(2 * v8.cylinders)
    expect(step?.features).toContainEqual(shortBlock.crosshatch(8))
  })

  it('by the rings’ sheet where there is one', () => {
    const limits = { low: 22_000, high: 32_000, target: 27_000, adviceLow: null, adviceHigh: null }
    const { requirements } = plan(planInput(v8, v8Parts, {
      sheets: [{ fit: 'bore-crosshatch', level: 'part-maker', limits, source: 'a ring sheet, invented' }],
    }))
    expect(requirements.find(({ key }) => key === 'bore-crosshatch/1')).toMatchObject({ limits, why: { level: 'part-maker' } })
  })
})
