import { describe, expect, it } from 'vitest'
import { valvesOf } from '../engine/valves.ts'
import { parseQuantity } from '../exact/parse-quantity.ts'
import { springLoad } from '../features/top-end/references.ts'
import { plan } from '../plan/plan.ts'
import { asMeasured, verdictOn } from '../testing/as-measured.ts'
import { planInput, v8, v8Parts } from '../testing/engines.ts'

const pounds = (text: string) => parseQuantity(text, 'poundForce')
const base = planInput(v8, v8Parts, { work: 'full-rebuild' })
const limits = { low: pounds('115'), high: pounds('130'), target: pounds('122'), adviceLow: null, adviceHigh: null }
const made = plan({
  ...base, sheets: [{ fit: 'intake-spring-load', level: 'part-maker', limits, source: 'a spring’s card, invented' }],
})

const loads = (third: string) => asMeasured(made, valvesOf(v8, 'intake')
  .map((valve) => [springLoad(valve), pounds(valve.number === 3 ? third : '126')] as const))

describe('springs at their installed height', () => {
  it('are judged by their card alone: without one they are neither measured nor matched', () => {
    const without = plan(base)
    expect(without.requirements.filter(({ fit }) => /spring-(load|match)/.test(fit))).toEqual([])
    expect(without.features.filter(({ feature }) => feature.includes('spring-load'))).toEqual([])
    expect(without.findings.map(({ title }) => title).join()).toContain('intake spring load')
  })

  it('load inside the card’s limits; a weak one is shimmed or changed, by how much is said', () => {
    expect(verdictOn(made, 'intake-spring-load/3', loads('120')).kind).toBe('within')
    const { kind, side, remedy } = verdictOn(made, 'intake-spring-load/3', loads('110'))
    expect([kind, side, remedy?.action]).toEqual(['outside', 'low', 'shim'])
    expect(remedy?.sentence).toContain('53 N more is wanted to reach 543 N')
  })

  it('pull alike within 10 lbf of the strongest', () => {
    expect(verdictOn(made, 'intake-spring-match/3', loads('116.5')).kind).toBe('within')
    const { kind, remedy } = verdictOn(made, 'intake-spring-match/3', loads('115.5'))
    expect(kind).toBe('outside')
    expect(remedy?.sentence).toMatch(/^Shim \(intake valve 3 spring, load at installed height\): it stands 47 N under the greatest of its set\./)
    expect(verdictOn(made, 'intake-spring-match/4', loads('115.5'))).toMatchObject({ kind: 'within', least: 0 })
  })

  it('of a kind without a card stay unmeasured beside the others', () => {
    expect(made.features.some(({ feature }) => feature.startsWith('exhaust-spring-load'))).toBe(false)
  })
})
