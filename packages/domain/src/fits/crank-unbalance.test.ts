import { describe, expect, it } from 'vitest'
import { crankUnbalance, retainersWeight } from '../features/references.ts'
import { plan } from '../plan/plan.ts'
import { asMeasured, verdictOn } from '../testing/as-measured.ts'
import { inlineFour, metricParts, planInput, v8, v8Parts } from '../testing/engines.ts'

const engine = { ...v8, greatestSpeed: 6_000, crank: { mass: 25_000_000 } }
const made = plan(planInput(engine, v8Parts))
const requirement = made.requirements.find(({ fit }) => fit === 'crank-unbalance')

// ISO 21940-11: 25 kg at 6000/min in G 16 is 636.6 g·mm in all, 318.3 g·mm in each of two planes.
describe('the residual unbalance of a crankshaft', () => {
  it('is at most half of what its grade leaves, in each plane', () => {
    expect(requirement?.limits).toMatchObject({ low: null, high: 318_309 })
    expect(requirement?.why.worked[0]).toBe('25.00 kg × 1000 × 16 mm/s ÷ (2π × 6000 ÷ 60) = 637 g·mm')
  })

  it('is judged by its worse plane, and says how much is to go', () => {
    const { kind, remedy } = verdictOn(made, 'crank-unbalance/engine', asMeasured(made, [[crankUnbalance, 400_000]]))
    expect(kind).toBe('outside')
    expect(remedy?.sentence).toMatch(/^Take 82 g·mm off, to reach 318 g·mm\. Drill the counterweight/)
    expect(verdictOn(made, 'crank-unbalance/engine', asMeasured(made, [[crankUnbalance, 300_000]])).kind).toBe('within')
  })

  it.each([['weight', { ...engine, crank: {} }], ['greatest speed', v8]])('has no limit while the %s is not known, and asks for it', (_, unknown) => {
    const without = plan(planInput(unknown, v8Parts))
    expect(without.requirements.some(({ fit }) => fit === 'crank-unbalance')).toBe(false)
    expect(without.findings.find(({ key }) => key === 'sheet-needed/crank-unbalance')?.sentence)
      .toContain('crankshaft’s weight and the greatest speed')
    // It is measured and written down all the same.
    expect(without.operations.find(({ key }) => key === 'balance')?.features).toContainEqual(crankUnbalance)
  })

  it('takes what the balancing sheet allows', () => {
    const limits = { low: null, high: 150_000, target: null, adviceLow: null, adviceHigh: null }
    const sheeted = plan(planInput(v8, v8Parts, {
      sheets: [{ fit: 'crank-unbalance', level: 'engine-maker', limits, source: 'a balancing sheet, invented' }],
    }))
    expect(sheeted.requirements.find(({ fit }) => fit === 'crank-unbalance')?.limits.high).toBe(150_000)
  })

  it('is not worked out for a crank of 25 t: its decimal point slipped, and the field is named', () => {
    expect(() => plan(planInput({ ...engine, crank: { mass: 25_000_000_000 } }, v8Parts))).toThrow(
      expect.objectContaining({ field: 'engine.crank.mass' }),
    )
  })
})

describe('what lies on the scales', () => {
  it('has retainers with floating pins alone', () => {
    const step = (of: typeof made) => of.operations.find(({ key }) => key === 'balance')?.features
    expect(step(made)).toContainEqual(retainersWeight)
    expect(step(plan(planInput(inlineFour, metricParts)))).not.toContainEqual(retainersWeight)
  })
})
