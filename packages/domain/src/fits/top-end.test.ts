import { describe, expect, it } from 'vitest'
import type { FeatureReference } from '../features/feature.ts'
import { featureKey } from '../features/feature.ts'
import { retainerRoom, seatRunOut, valveGuide, valveStem } from '../features/top-end/references.ts'
import { judge } from '../judging/judge.ts'
import type { Requirement } from '../judging/requirement.ts'
import { measurementsOf } from '../measuring/pass.ts'
import { plan } from '../plan/plan.ts'
import { inches, inlineFour, metricParts, planInput, v8, v8Parts } from '../testing/engines.ts'

const base = planInput(v8, v8Parts, { work: 'full-rebuild' })
const made = plan(base)

function requirement(key: string, of = made): Requirement {
  const found = of.requirements.find((each) => each.key === key)
  if (found === undefined) throw new Error(`No requirement ${key}`)
  return found
}
const pair = (key: string) => {
  const { low, high } = requirement(key).limits
  return [low, high]
}

function verdict(key: string, values: readonly (readonly [FeatureReference, number])[]) {
  const passes = values.map(([reference, value]) => ({
    partId: reference.place, feature: reference.feature, number: 1, standardUncertainty: 0, state: [], setOn: null,
    readings: (made.features.find((each) => featureKey(each) === featureKey(reference))?.points ?? []).map((point) => ({
      id: `${featureKey(reference)}@${point.key}`, point: point.key, value: inches(value),
    })),
  }))
  const placed = values.map(([{ place }]) => ({ place, partId: place }))
  return judge(requirement(key), measurementsOf(placed, passes), made.features)
}

// All figures from memory.
describe('heads and valve train', () => {
  it('give stems, cam journals and lifters their room', () => {
    expect(pair('intake-stem-in-guide/1')).toEqual([inches(0.001), inches(0.0025)])
    expect(pair('exhaust-stem-in-guide/8')).toEqual([inches(0.0015), inches(0.003)])
    expect(pair('cam-bearing/5')).toEqual([inches(0.002), inches(0.004)])
    expect(pair('lifter-in-bore/16')).toEqual([inches(0.001), inches(0.002)])
  })

  it('hold seats and faces to a greatest only', () => {
    expect(pair('exhaust-seat-run-out/3')).toEqual([null, inches(0.002)])
    expect(pair('head-flatness/2')).toEqual([null, inches(0.003)])
    expect(pair('deck-flatness/1')).toEqual([null, inches(0.003)])
  })

  it('keep springs off coil bind and retainers off seals', () => {
    expect(requirement('intake-coil-bind/1').limits).toMatchObject({
      low: inches(0.06), high: null, adviceHigh: inches(0.1),
    })
    expect(pair('exhaust-retainer-to-seal/8')).toEqual([inches(0.05), null])
  })

  it('keep valves off pistons, farther with aluminium rods', () => {
    const aluminium = plan({ ...base, parts: { ...v8Parts, rod: { ...v8Parts.rod, material: 'aluminium' } } })
    const low = (kind: string, of = made) => requirement(`${kind}-valve-to-piston-axial/1`, of).limits.low
    expect([low('intake'), low('exhaust')]).toEqual([inches(0.08), inches(0.1)])
    expect([low('intake', aluminium), low('exhaust', aluminium)]).toEqual([inches(0.1), inches(0.12)])
    expect(pair('intake-valve-to-piston-radial/4')).toEqual([inches(0.05), null])
    expect(requirement('intake-valve-to-piston-axial/1', aluminium).why.worked[0]).toContain('0.0200 in')
  })

  it('belong to the head of their own bank, one head where there is one bank', () => {
    const holes = (of: typeof made) =>
      of.requirements.flatMap(({ fit, measurand }) =>
        fit === 'intake-stem-in-guide' && measurand.kind === 'clearance' ? [measurand.hole.place] : [],
      )
    expect(holes(made)).toEqual([...Array<string>(4).fill('head/1'), ...Array<string>(4).fill('head/2')])
    const four = plan(planInput(inlineFour, metricParts, { work: 'head-service' }))
    expect(holes(four)).toEqual(Array<string>(4).fill('head/1'))
  })
})

describe('a remedy of the top end', () => {
  const valve = { kind: 'intake', number: 1, cylinder: 1, head: 1 } as const

  it('reams a tight guide to the target, and replaces a loose one', () => {
    const clearance = (value: number) =>
      verdict('intake-stem-in-guide/1', [[valveGuide(valve), 0.342 + value], [valveStem(valve), 0.342]])
    expect(clearance(0.0006).remedy).toMatchObject({
      action: 'hone', amount: inches(0.00175) - inches(0.0006), feature: valveGuide(valve), reaches: 'target',
    })
    expect(clearance(0.0015).kind).toBe('within')
    expect(clearance(0.004).remedy).toMatchObject({ action: 'replace', amount: null })
  })

  it('cuts the guide’s boss for a retainer that would strike the seal', () => {
    const found = verdict('intake-retainer-to-seal/1', [[retainerRoom(valve), 0.03]])
    expect(found).toMatchObject({ kind: 'outside', side: 'low', remedy: { action: 'face', amount: inches(0.02) } })
  })

  it('looks for the reason before a seat that runs out is cut again', () => {
    const found = verdict('intake-seat-run-out/1', [[seatRunOut(valve), 0.0025]])
    expect(found).toMatchObject({ kind: 'outside', side: 'high', remedy: { action: 'investigate' } })
  })
})
