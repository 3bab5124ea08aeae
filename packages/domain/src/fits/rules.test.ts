import { describe, expect, it } from 'vitest'
import type { Limits, Requirement } from '../judging/requirement.ts'
import { plan } from '../plan/plan.ts'
import type { PlanInput, SheetLimit } from '../plan/plan-types.ts'
import { inches, planInput, testPlans, v8, v8Parts } from '../testing/engines.ts'
import { fits } from './index.ts'
import { starterRules } from './starter-rules.ts'

const base = planInput(v8, v8Parts)

function requirement(input: PlanInput, key: string): Requirement {
  const found = plan(input).requirements.find((each) => each.key === key)
  if (found === undefined) throw new Error(`No requirement ${key}`)
  return found
}
const none: Limits = { low: null, high: null, target: null, adviceLow: null, adviceHigh: null }

describe('whose limits count', () => {
  const sheet = (level: SheetLimit['level'], low: number): SheetLimit => ({
    fit: 'piston-in-bore',
    level,
    limits: { ...none, low, high: low + 1_000 },
    source: `sheet of the ${level}`,
  })
  const rule = {
    fit: 'piston-in-bore',
    revision: 3,
    parameters: { '2618-low': 800 },
    source: 'the owner’s notebook',
  }

  it('is the part maker’s, then the engine maker’s, then the shop’s, then the starter’s', () => {
    const inForce = (changes: Partial<PlanInput>) => {
      const { limits: found, why } = requirement({ ...base, ...changes }, 'piston-in-bore/1')
      return { low: found.low, level: why.level }
    }
    const sheets = [sheet('engine-maker', 2_000), sheet('part-maker', 3_000), sheet('engine-maker', 2_500)]
    expect(inForce({ rules: [rule], sheets })).toEqual({ low: 3_000, level: 'part-maker' })
    expect(inForce({ rules: [rule], sheets: [sheets[0] as SheetLimit] })).toEqual({
      low: 2_000,
      level: 'engine-maker',
    })
    expect(inForce({ rules: [rule] })).toEqual({ low: 81_890, level: 'shop' })
    expect(inForce({})).toEqual({ low: 92_126, level: 'starter' })
  })

  it('keeps the starter’s numbers where the shop’s newest revision gives none, and names both sources', () => {
    const older = { ...rule, revision: 2, parameters: { '2618-low': 100 } }
    const { limits: found, why } = requirement({ ...base, rules: [older, rule] }, 'piston-in-bore/1')
    expect(found.high).toBe(122_834)
    expect(why).toMatchObject({ revision: 3, source: 'the owner’s notebook; from memory' })
  })

  it('gives a verdict back to a fit that only its maker knows', () => {
    const stretch: SheetLimit = {
      fit: 'rod-bolt-stretch',
      level: 'part-maker',
      limits: { ...none, low: inches(0.0055), high: inches(0.006) },
      source: 'bolt maker’s card',
    }
    const made = plan({ ...base, sheets: [stretch] })
    expect(made.requirements.filter(({ fit }) => fit === 'rod-bolt-stretch')).toHaveLength(8)
    // One way of tightening is enough: nobody asks for torque or angle of the same bolts.
    expect(made.findings.map(({ title }) => title)).toEqual([
      'Residual unbalance of the crankshaft: maker’s sheet needed', 'Main cap bolts: maker’s sheet needed',
    ])
  })

  it.each([
    ['a rule of a fit that is not there', { rules: [{ ...rule, fit: 'piston-in-sky' }] }],
    [
      'a sheet of a fit that is not there',
      { sheets: [{ ...sheet('part-maker', 1), fit: 'piston-in-sky' }] },
    ],
    ['a number that its fit does not have', { rules: [{ ...rule, parameters: { colour: 1 } }] }],
    ['a guard that is no choice', { rules: [{ ...rule, parameters: { guard: 7 } }] }],
  ])('refuses %s', (_, changes) => {
    expect(() => plan({ ...base, ...changes })).toThrow(expect.objectContaining({ code: 'rule-unknown' }))
  })
})

describe('a fit', () => {
  it('limits the quantity that it says, on every line', () => {
    const sheets = fits.map(({ key }): SheetLimit => ({ fit: key, level: 'part-maker', limits: { ...none, low: 1, high: 2 }, source: 'a sheet' }))
    const quantityOf = new Map(starterRules().map(({ fit, quantity }) => [fit, quantity]))
    for (const { fit, quantity } of plan({ ...base, work: 'full-rebuild', sheets }).requirements) {
      expect(quantity, fit).toBe(quantityOf.get(fit))
    }
  })
})

describe('a guard', () => {
  it('is kept on wide fits, left off where ordinary gauges prove nothing, and is the shop’s to change', () => {
    const guardOf = (key: string, input = base) => requirement(input, key).guard.kind
    expect(guardOf('piston-in-bore/1')).toBe('guarded')
    expect(guardOf('rod-bearing/1')).toBe('none')
    const rules = [{ fit: 'rod-bearing', revision: 1, parameters: { guard: 1 }, source: 'the owner' }]
    expect(guardOf('rod-bearing/1', { ...base, rules })).toBe('guarded')
  })
})

describe('the starter rules', () => {
  it('cover every fit once, each number with a source', () => {
    const keys = starterRules().map(({ fit }) => fit)
    expect(new Set(keys).size).toBe(fits.length)
    for (const { parameters } of starterRules()) {
      for (const { source } of parameters) expect(source).not.toBe('')
    }
  })

  it('write the limits of every test engine when given back as the shop’s own', () => {
    for (const input of testPlans) {
      const rules = starterRules().map(({ fit, parameters }) => ({
        fit,
        revision: 1,
        source: 'copied',
        parameters: Object.fromEntries(parameters.map(({ key, value }) => [key, value])),
      }))
      const bare = (made: PlanInput) =>
        plan(made).requirements.map(({ key, limits: found, guard }) => ({ key, found, guard }))
      expect(bare({ ...input, rules })).toEqual(bare(input))
    }
  })
})
