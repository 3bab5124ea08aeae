import { describe, expect, it } from 'vitest'
import type { Duty } from '../engine/duty.ts'
import type { EngineSpecification, PartsSpecification, PistonAlloy } from '../engine/specification.ts'
import type { Limits, Requirement } from '../judging/requirement.ts'
import { plan } from '../plan/plan.ts'
import type { PlanInput } from '../plan/plan-types.ts'
import {
  flatFour,
  inches,
  inlineFour,
  metricParts,
  planInput,
  v6,
  v8,
  v8Parts,
} from '../testing/engines.ts'

const base = planInput(v8, v8Parts)

function requirement(input: PlanInput, key: string): Requirement {
  const found = plan(input).requirements.find((each) => each.key === key)
  if (found === undefined) throw new Error(`No requirement ${key}`)
  return found
}
const limits = (input: PlanInput, key: string): Limits => requirement(input, key).limits
const withPiston = (alloy: PistonAlloy, duty: Duty = 'street'): PlanInput => ({
  ...base,
  duty,
  parts: { ...v8Parts, piston: { ...v8Parts.piston, alloy } },
})
const withBore = (bore: number): PlanInput => ({ ...base, engine: { ...v8, bore: inches(bore) } })
const none: Limits = { low: null, high: null, target: null, adviceLow: null, adviceHigh: null }

describe('a floating pin in its rod', () => {
  it('has 0.0003–0.0008 in, target 0.0005, and 0.0006–0.0010, target 0.0007, when boosted', () => {
    const street = limits(base, 'pin-in-rod/1')
    expect(street).toEqual({ ...none, low: inches(0.0003), high: inches(0.0008), target: inches(0.0005) })
    for (const duty of ['mild-boost', 'hard-boost'] as const) {
      expect(limits({ ...base, duty }, 'pin-in-rod/1')).toEqual({
        ...none,
        low: inches(0.0006),
        high: inches(0.001),
        target: inches(0.0007),
      })
    }
  })

  it('is guarded: a gauge set on the pin proves it', () => {
    expect(requirement(base, 'pin-in-rod/8').guard).toEqual({ kind: 'guarded', coverageFactor: 2 })
  })
})

describe('a pin in its piston', () => {
  it('follows forging, boost and the pin’s fit in the rod', () => {
    const pair = ({ low, high }: Limits) => [low, high]
    expect(pair(limits(withPiston('cast'), 'pin-in-piston/1'))).toEqual([inches(0.0001), inches(0.0005)])
    expect(pair(limits(withPiston('4032'), 'pin-in-piston/1'))).toEqual([inches(0.0005), inches(0.001)])
    expect(pair(limits(withPiston('2618', 'hard-boost'), 'pin-in-piston/1'))).toEqual([
      inches(0.0007),
      inches(0.0012),
    ])
    expect(pair(limits(planInput(inlineFour, metricParts), 'pin-in-piston/1'))).toEqual([
      inches(0.0003),
      inches(0.0008),
    ])
  })
})

describe('a pressed pin', () => {
  it('has 0.0008 to 0.0016 in interference, as a negative clearance', () => {
    expect(limits(planInput(inlineFour, metricParts), 'pressed-pin-in-rod/4')).toEqual({
      low: inches(-0.0016),
      high: inches(-0.0008),
      target: inches(-0.0015),
      adviceLow: inches(-0.0015),
      adviceHigh: inches(-0.001),
    })
  })
})

describe('a piston in its bore', () => {
  it.each<[PistonAlloy, Duty, number, number]>([
    ['cast', 'street', 0.0005, 0.00075],
    ['hypereutectic', 'towing', 0.00045, 0.0006],
    ['4032', 'restoration', 0.0006, 0.0009],
    ['2618', 'street', 0.0009, 0.0012],
    ['2618', 'mild-boost', 0.0009 * 1.25, 0.0012 * 1.25],
    ['4032', 'sustained', 0.0006 * 1.15, 0.0009 * 1.25],
  ])('of %s, %s, follows its bore per inch', (alloy, duty, low, high) => {
    const found = limits(withPiston(alloy, duty), 'piston-in-bore/3')
    expect(Math.abs((found.low ?? 0) - 4.03 * low * 25_400_000)).toBeLessThanOrEqual(0.5)
    expect(Math.abs((found.high ?? 0) - 4.03 * high * 25_400_000)).toBeLessThanOrEqual(0.5)
  })

  it('grows with the bore, and its why says so with the numbers in it', () => {
    const { limits: wide, why } = requirement(withBore(4.06), 'piston-in-bore/1')
    expect(wide.low).toBe(92_812)
    expect(why.worked[0]).toBe(
      'Low: 4.0600 in (103.124 mm) × 0.00090 per unit of diameter = 0.00365 in (0.0928 mm)',
    )
    expect(why).toMatchObject({ level: 'starter', revision: 0, source: 'from memory' })
  })

  it('gets no verdict on an air-cooled engine without its maker’s sheet', () => {
    const made = plan(planInput(flatFour, metricParts))
    expect(made.requirements.some(({ fit }) => fit === 'piston-in-bore')).toBe(false)
    expect(made.findings.map(({ key }) => key)).toContain('sheet-needed/piston-in-bore')
  })

  it.each<[string, Partial<EngineSpecification>, RegExp]>([
    ['plated', { boreSurface: 'plated' }, /^The piston in a plated bore has no general clearance\./],
    ['of a two-stroke', { cycle: 'two-stroke' }, /^The piston of a two-stroke engine has no general clearance\./],
  ])('gets no verdict in a bore that is %s without its maker’s sheet, and its limits with it', (_, told, reason) => {
    const input = planInput({ ...v8, ...told }, v8Parts)
    const made = plan(input)
    expect(made.requirements.some(({ fit }) => fit === 'piston-in-bore')).toBe(false)
    expect(made.findings.find(({ key }) => key === 'sheet-needed/piston-in-bore')?.sentence).toMatch(reason)
    const sheetLimits = { ...none, low: inches(0.001), high: inches(0.002) }
    const sheets = [{ fit: 'piston-in-bore', level: 'part-maker' as const, limits: sheetLimits, source: 'Piston sheet' }]
    expect(limits({ ...input, sheets }, 'piston-in-bore/1')).toEqual(sheetLimits)
  })

  it('has the same limits in a sleeved bore, in a four-stroke, and where nobody has told', () => {
    const told = planInput({ ...v8, boreSurface: 'sleeved', cycle: 'four-stroke' }, v8Parts)
    expect(limits(told, 'piston-in-bore/1')).toEqual(limits(base, 'piston-in-bore/1'))
  })

  it('stops the plan for a cast piston with nitrous', () => {
    const keys = (alloy: PistonAlloy) => plan(withPiston(alloy, 'nitrous')).findings.map(({ key }) => key)
    expect(keys('cast')).toContain('nitrous-on-cast-pistons')
    expect(keys('2618')).not.toContain('nitrous-on-cast-pistons')
  })
})

describe('a plain bearing', () => {
  it('has 0.00075 to 0.0010 in per inch of journal: 0.0015–0.0020 in on a 2.000 in shaft', () => {
    // A bearing maker's bulletin, read in a reproduction.
    const engine = { ...v8, rodJournals: { ...v8.rodJournals, diameter: inches(2) } }
    expect(limits(planInput(engine, v8Parts), 'rod-bearing/1')).toMatchObject({
      low: inches(0.0015),
      high: inches(0.002),
    })
  })

  it('uses the upper half when boosted or sustained', () => {
    const engine = { ...v8, rodJournals: { ...v8.rodJournals, diameter: inches(2) } }
    for (const duty of ['mild-boost', 'sustained'] as const) {
      expect(limits({ ...planInput(engine, v8Parts), duty }, 'rod-bearing/1')).toMatchObject({
        low: inches(0.00175),
        high: inches(0.002),
      })
    }
  })

  it('is never under 0.0010 in without a sheet, and small journals get no verdict', () => {
    const on = (diameter: number) =>
      planInput({ ...v8, rodJournals: { ...v8.rodJournals, diameter: inches(diameter) } }, v8Parts)
    expect(limits(on(1.2), 'rod-bearing/1')).toMatchObject({ low: inches(0.001), high: inches(0.0012) })
    expect(plan(on(0.9)).findings.map(({ key }) => key)).toContain('sheet-needed/rod-bearing')
  })
})

describe('side and end', () => {
  it('clearance of rods follows their number on the pin and their material', () => {
    const pair = (input: PlanInput) => {
      const { low, high } = limits(input, 'rod-side-clearance/1')
      return [low, high]
    }
    const aluminium = { ...v8Parts, rod: { ...v8Parts.rod, material: 'aluminium' as const } }
    expect(pair(base)).toEqual([inches(0.008), inches(0.02)])
    expect(pair(planInput(v8, aluminium))).toEqual([inches(0.015), inches(0.03)])
    expect(pair(planInput(v6, v8Parts))).toEqual([inches(0.006), inches(0.014)])
  })

  it('play of the crank is 0.003–0.010 in to 3 in mains; larger ones need the maker’s sheet', () => {
    expect(limits(base, 'crank-end-play/engine')).toEqual({
      low: inches(0.003),
      high: inches(0.01),
      target: inches(0.006),
      adviceLow: inches(0.004),
      adviceHigh: inches(0.008),
    })
    const large = { ...v8, mains: { ...v8.mains, diameter: inches(3.1), housing: inches(3.3) } }
    expect(plan(planInput(large, v8Parts)).findings.map(({ key }) => key)).toContain(
      'sheet-needed/crank-end-play+crank-end-play-final',
    )
  })

  it('play of the pin between flat rings is at most 0.005 in; wire needs its maker’s sheet', () => {
    expect(limits(base, 'pin-end-play/1')).toMatchObject({ low: 0, high: inches(0.005) })
    const wire = { ...v8Parts, retainers: null }
    expect(plan(planInput(v8, wire)).findings.map(({ key }) => key)).toContain('sheet-needed/pin-end-play')
  })
})

describe('a ring’s end gap', () => {
  it.each<[Duty, number]>([
    ['street', 0.0045],
    ['restoration', 0.0045],
    ['towing', 0.005],
    ['mild-boost', 0.005],
    ['sustained', 0.0055],
    ['hard-boost', 0.0065],
    ['nitrous', 0.0065],
  ])('is at least, for %s, %d in per inch of bore', (duty, perInch) => {
    const found = limits({ ...withBore(4.03), duty }, 'top-ring-end-gap/1')
    expect(Math.abs((found.low ?? 0) - 4.03 * perInch * 25_400_000)).toBeLessThanOrEqual(0.5)
    expect(found.high).toBeNull()
    expect(found.adviceHigh).toBe((found.low ?? 0) + inches(0.006))
    expect(limits({ ...withBore(4.03), duty }, 'second-ring-end-gap/1').low).toBe(found.low)
  })

  it('is 0.0180 in on a 4.000 in street bore', () => {
    // A piston maker's ring sheet, read.
    const engine = { ...v8, bore: inches(4) }
    const parts = { ...v8Parts, piston: { ...v8Parts.piston, diameter: inches(3.996) } }
    expect(limits(planInput(engine, parts), 'top-ring-end-gap/1').low).toBe(inches(0.018))
    expect(limits(planInput(engine, parts), 'oil-rail-end-gap/1').low).toBe(inches(0.015))
  })

  it('stands on the maker’s sheet for hypereutectic pistons', () => {
    expect(plan(withPiston('hypereutectic')).findings.map(({ key }) => key)).toContain(
      'sheet-needed/top-ring-end-gap+second-ring-end-gap',
    )
  })
})

describe('deck clearance', () => {
  it('has advice around the stack, and a low limit once the gasket is chosen', () => {
    expect(limits(base, 'deck-clearance/1')).toEqual({
      low: null,
      high: null,
      target: inches(0.025),
      adviceLow: inches(0.02),
      adviceHigh: inches(0.03),
    })
    expect(limits({ ...base, parts: { ...v8Parts, gasketThickness: inches(0.02) } }, 'deck-clearance/1').low).toBe(inches(0.015))
  })

  const gasketThickness = inches(0.02)
  const quench = (engine: Partial<EngineSpecification>, parts: Partial<PartsSpecification> = {}) =>
    requirement(planInput({ ...v8, ...engine }, { ...v8Parts, ...parts, gasketThickness }), 'deck-clearance/1')
  const aluminium = { rod: { ...v8Parts.rod, material: 'aluminium' as const } }

  it.each<[string, number, Partial<PartsSpecification>, number]>([
    ['7,500/min, steel rods', 7_500, {}, 0.015],
    ['7,501/min, steel rods', 7_501, {}, 0.02],
    ['7,500/min, aluminium rods', 7_500, aluminium, 0.035],
    ['9,000/min, aluminium rods', 9_000, aluminium, 0.04],
  ])('asks for 0.005 in more quench above 7,500/min only: %s', (_, greatestSpeed, parts, low) => {
    expect(quench({ greatestSpeed }, parts).limits.low).toBe(inches(low))
  })

  it('says in its why what speed asks for', () => {
    expect(quench({ greatestSpeed: 8_200 }).why.worked[0]).toBe(
      'Above 7,500/min, here up to 8,200/min: 0.0350 in (0.889 mm) + 0.0050 in (0.127 mm) = 0.0400 in (1.016 mm)',
    )
  })

  it.each<[string, Partial<EngineSpecification>, Partial<PartsSpecification>]>([
    ['dished pistons', {}, { piston: { ...v8Parts.piston, crown: 'dished' } }],
    ['diesels', { ignition: 'diesel' }, {}],
    ['open chambers', { head: { chamber: 'open' } }, {}],
  ])('has no least quench for %s, only the stack, and says so', (words, engine, parts) => {
    const { limits: found, why } = quench({ greatestSpeed: 9_000, ...engine }, parts)
    expect(found).toEqual(limits(base, 'deck-clearance/1'))
    expect(why.formula).toMatch(new RegExp(`; no least quench: it is not for ${words}$`))
  })

  it('says what nobody has told and what it is taken to be, and nothing once all is told', () => {
    expect(quench({}).why.worked.at(-1)).toBe(
      'Not told, so taken to be: a greatest speed up to 7,500/min, a closed chamber, a crown without a dish, firing by a spark',
    )
    const told = quench(
      { greatestSpeed: 6_000, ignition: 'spark', head: { chamber: 'closed' } }, { piston: { ...v8Parts.piston, crown: 'domed' } },
    )
    expect(told.limits.low).toBe(inches(0.015))
    expect(told.why.worked.join(' ')).not.toMatch(/told/)
  })
})

describe('journals', () => {
  it('are held closer when ground than when used again', () => {
    const used = { ...base, options: { ...base.options, crank: 'none' as const } }
    expect(limits(base, 'main-journal-taper/5').high).toBe(inches(0.0003))
    expect(limits(used, 'main-journal-taper/5').high).toBe(inches(0.0005))
  })
})
