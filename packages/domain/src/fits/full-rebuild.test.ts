import { describe, expect, it } from 'vitest'
import { parseQuantity } from '../exact/parse-quantity.ts'
import type { FeatureReference } from '../features/feature.ts'
import { featureKey } from '../features/feature.ts'
import { mainRunOut, pickUpToPan, rodBoltSet } from '../features/references.ts'
import { camEndPlay, guideBody, guideHole, leakDown, seatWidth, valveMargin } from '../features/top-end/references.ts'
import { judge } from '../judging/judge.ts'
import type { Limits } from '../judging/requirement.ts'
import { measurementsOf } from '../measuring/pass.ts'
import { plan } from '../plan/plan.ts'
import type { Plan, PlanInput, SheetLimit } from '../plan/plan-types.ts'
import { inches, inlineFour, metricParts, planInput, v8, v8Parts } from '../testing/engines.ts'

const base = planInput(v8, v8Parts, { work: 'full-rebuild' })
const withHeads = (changes: Partial<PlanInput> = {}): Plan =>
  plan({ ...base, options: { ...base.options, newGuides: true, newSeats: true }, ...changes })

function requirement(key: string, made: Plan = plan(base)) {
  const found = made.requirements.find((each) => each.key === key)
  if (found === undefined) throw new Error(`No requirement ${key}`)
  return found
}
const pair = (key: string, made?: Plan) => {
  const { low, high } = requirement(key, made).limits
  return [low, high]
}

/** The verdict when every point of these features reads the given base value. */
function verdict(key: string, values: readonly (readonly [FeatureReference, number])[], made: Plan = plan(base)) {
  const passes = values.map(([reference, value]) => ({
    partId: reference.place, feature: reference.feature, number: 1, standardUncertainty: 0, state: [], setOn: null,
    readings: (made.features.find((each) => featureKey(each) === featureKey(reference))?.points ?? []).map((point) => ({
      id: `${featureKey(reference)}@${point.key}`, point: point.key, value,
    })),
  }))
  const placed = values.map(([{ place }]) => ({ place, partId: place }))
  return judge(requirement(key, made), measurementsOf(placed, passes), made.features)
}

const valve = { kind: 'exhaust', number: 2, cylinder: 2, head: 1 } as const

// All figures from memory.
describe('bolts', () => {
  const limits: Limits = { low: 100_000, high: 110_000, target: null, adviceLow: null, adviceHigh: null }
  const sheet = (fit: string): SheetLimit => ({ fit, level: 'part-maker', limits, source: 'bolt maker’s card' })

  it('of heads are judged by torque, by angle or by stretch, as their maker’s sheet says, each bolt of each head', () => {
    for (const way of ['torque', 'angle', 'stretch']) {
      const made = plan({ ...base, sheets: [sheet(`head-bolt-${way}`)] })
      expect(made.requirements.filter(({ fit }) => fit.startsWith('head-bolt'))).toHaveLength(2)
      const [feature] = made.features.filter(({ place, feature: name }) => place === 'head-bolts/1' && name === way)
      expect(feature?.points).toHaveLength(10)
      const step = made.operations.find(({ key }) => key === 'install-heads')
      expect(step?.requirements).toContain(`head-bolt-${way}/2`)
    }
    const studs = plan({ ...base, engine: { ...v8, head: { bolts: 17 } }, sheets: [sheet('head-bolt-torque')] })
    expect(studs.features.find(({ place }) => place === 'head-bolts/2')?.points).toHaveLength(17)
  })

  it('of rods and mains are judged by angle, too', () => {
    const made = plan({ ...base, sheets: [sheet('rod-bolt-angle'), sheet('main-bolt-angle')] })
    expect(requirement('rod-bolt-angle/8', made).quantity).toBe('angle')
    expect(requirement('main-bolt-angle/5', made).quantity).toBe('angle')
    expect(made.features.some(({ feature }) => feature === 'stretch')).toBe(false)
  })

  it('of rods that stayed longer when released are looked at over 0.0005 in, and scrap over 0.0010 in', () => {
    const of = (set: number) => verdict('rod-bolt-set/3', [[rodBoltSet(3), inches(set)]])
    expect(of(0.0004)).toMatchObject({ kind: 'within', advice: null })
    expect(of(0.0008)).toMatchObject({ kind: 'within', advice: expect.any(String) })
    expect(of(0.0012)).toMatchObject({ kind: 'outside', remedy: { action: 'replace' } })
  })
})

describe('a crank and what runs beside it', () => {
  it('runs out on the mains between its ends, less when it is worked hard', () => {
    const made = plan(base)
    expect(made.requirements.filter(({ fit }) => fit === 'crank-run-out').map(({ position }) => position)).toEqual([2, 3, 4])
    expect(pair('crank-run-out/3')).toEqual([null, inches(0.002)])
    expect(pair('crank-run-out/3', plan({ ...base, duty: 'hard-boost' }))).toEqual([null, inches(0.0015)])
    expect(verdict('crank-run-out/3', [[mainRunOut(3), inches(0.003)]])).toMatchObject({ kind: 'outside', remedy: { action: 'investigate' } })
  })

  it('has a camshaft with end play in the block, none by rule overhead, and a pick-up off the pan’s floor', () => {
    expect(pair('cam-end-play/engine')).toEqual([inches(0.002), inches(0.01)])
    expect(verdict('cam-end-play/engine', [[camEndPlay, inches(0.001)]]).remedy).toMatchObject({ action: 'shim' })
    expect(verdict('pick-up-to-pan/engine', [[pickUpToPan, inches(0.2)]])).toMatchObject({ kind: 'outside', side: 'low' })
    const overhead = plan({ ...base, engine: { ...v8, valveTrain: { camshaft: 'overhead', intakeValves: 2, exhaustValves: 2 } } })
    expect(overhead.requirements.some(({ fit }) => fit === 'cam-end-play')).toBe(false)
  })
})

describe('seats, valves and guides', () => {
  it('get more room and metal on the exhaust side where it is hot', () => {
    const hot = plan({ ...base, duty: 'sustained' })
    expect(pair('exhaust-stem-in-guide/1', hot)).toEqual([inches(0.002), inches(0.0035)])
    expect(pair('exhaust-seat-width/1')).toEqual([inches(0.06), inches(0.1)])
    expect(pair('exhaust-seat-width/1', hot)).toEqual([inches(0.07), inches(0.11)])
    expect(pair('exhaust-valve-margin/1', hot)).toEqual([inches(0.055), null])
    for (const fit of ['intake-stem-in-guide', 'intake-seat-width', 'intake-valve-margin']) {
      expect(pair(`${fit}/1`, hot)).toEqual(pair(`${fit}/1`))
    }
  })

  it('are recut when the seat is narrow, and replaced when the rim is thin', () => {
    expect(verdict('exhaust-seat-width/2', [[seatWidth(valve), inches(0.05)]]).remedy).toMatchObject({ action: 'investigate' })
    expect(verdict('exhaust-valve-margin/2', [[valveMargin(valve), inches(0.03)]]).remedy).toMatchObject({ action: 'replace' })
  })

  it('are pressed into their head tighter where it is aluminium, and not judged while nobody says what it is', () => {
    const of = (material: 'iron' | 'aluminium') => withHeads({ engine: { ...v8, head: { material } } })
    expect(pair('exhaust-seat-in-head/2', of('iron'))).toEqual([-inches(0.005), -inches(0.003)])
    expect(pair('exhaust-seat-in-head/2', of('aluminium'))).toEqual([-inches(0.007), -inches(0.005)])
    expect(pair('intake-guide-in-head/2', of('iron'))).toEqual([-inches(0.002), -inches(0.001)])
    expect(withHeads().findings.map(({ sentence }) => sentence).join()).toContain('iron or aluminium')
    expect(plan(base).requirements.some(({ fit }) => fit.endsWith('-in-head'))).toBe(false)
  })

  it('ream the hole of a guide that is too tight by exactly what is missing, and ask for another guide when it is loose', () => {
    const made = withHeads({ engine: { ...v8, head: { material: 'iron' } } })
    const of = (interference: number) => verdict(
      'exhaust-guide-in-head/2', [[guideHole(valve), inches(0.5)], [guideBody(valve), inches(0.5 + interference)]], made,
    )
    expect(of(0.003).remedy).toMatchObject({ action: 'hone', amount: inches(0.0015), reaches: 'target' })
    expect(of(0.0005).remedy).toMatchObject({ action: 'replace' })
    expect(of(0.0015).kind).toBe('within')
  })
})

describe('flatness', () => {
  it('is asked more closely under boost, and less of a face over five cylinders or more', () => {
    expect(pair('head-flatness/1', plan({ ...base, duty: 'nitrous' }))).toEqual([null, inches(0.002)])
    const five = planInput(
      { ...inlineFour, cylinders: 5, rodJournals: { ...inlineFour.rodJournals, count: 5 }, mains: { ...inlineFour.mains, count: 6 } },
      metricParts, { work: 'full-rebuild' },
    )
    expect(pair('deck-flatness/1', plan(five))).toEqual([null, inches(0.004)])
  })
})

describe('a finished engine', () => {
  it('loses 20 psi of 100 at most, 10 being advised, and says where to listen', () => {
    const psi = (text: string) => parseQuantity(text, 'poundPerSquareInch')
    const of = (text: string) => verdict('leak-down/8', [[leakDown(8), psi(text)]])
    expect(of('8')).toMatchObject({ kind: 'within', advice: null })
    expect(of('14')).toMatchObject({ kind: 'within', advice: expect.any(String) })
    expect(of('22')).toMatchObject({ kind: 'outside', remedy: { action: 'investigate' } })
  })

  it('is timed, lashed and sprung by the cards of its camshaft and springs alone', () => {
    const keys = ['cam-centreline', 'intake-lash', 'exhaust-installed-height']
    const limits: Limits = { low: 1_000, high: 2_000, target: null, adviceLow: null, adviceHigh: null }
    const sheets = keys.map((fit): SheetLimit => ({ fit, level: 'part-maker', limits, source: 'cam card' }))
    const fitsOf = (made: Plan) => new Set(made.requirements.map(({ fit }) => fit))
    expect([...fitsOf(plan({ ...base, sheets }))]).toEqual(expect.arrayContaining(keys))
    for (const key of keys) expect(fitsOf(plan(base)).has(key)).toBe(false)
  })
})
