import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { duties } from '../engine/duty.ts'
import { camshaftPlaces } from '../engine/specification.ts'
import { featureKey } from '../features/feature.ts'
import type { FeatureReference } from '../features/feature.ts'
import { fits } from '../fits/index.ts'
import type { Measurand } from '../judging/requirement.ts'
import { inches, inlineFour, metricParts, planInput, testPlans, v8, v8Parts } from '../testing/engines.ts'
import { plan } from './plan.ts'
import { workKinds } from './plan-types.ts'
import type { Operation, Plan, PlanInput } from './plan-types.ts'

const sheetLimits = { low: 1_000, high: 2_000, target: null, adviceLow: null, adviceHigh: null }

const anyInput: fc.Arbitrary<PlanInput> = fc
  .record({
    base: fc.constantFrom(...testPlans),
    work: fc.constantFrom(...workKinds),
    camshaft: fc.constantFrom(...camshaftPlaces),
    intakeValves: fc.integer({ min: 1, max: 3 }),
    duty: fc.constantFrom(...duties),
    alignHone: fc.boolean(),
    deck: fc.boolean(),
    oversize: fc.boolean(),
    newRodBolts: fc.boolean(),
    balance: fc.boolean(),
    stroked: fc.boolean(),
    crank: fc.constantFrom('grind' as const, 'polish' as const, 'none' as const),
    newGuides: fc.boolean(),
    newSeats: fc.boolean(),
    pin: fc.constantFrom('floating' as const, 'pressed' as const),
    head: fc.constantFrom({}, { material: 'aluminium' as const, bolts: 17 }),
    sheeted: fc.subarray(fits.map(({ key }) => key)),
  })
  .map(({ base, work, duty, pin, camshaft, intakeValves, head, sheeted, ...options }) => ({
    ...base,
    work,
    engine: { ...base.engine, valveTrain: { camshaft, intakeValves, exhaustValves: 2 }, head },
    duty,
    options,
    sheets: sheeted.map((fit) => ({ fit, level: 'part-maker' as const, limits: sheetLimits, source: 'a sheet' })),
    parts: { ...base.parts, pin: { ...base.parts.pin, fit: pin } },
  }))

function referencesOf(measurand: Measurand): readonly FeatureReference[] {
  switch (measurand.kind) {
    case 'feature':
      return [measurand.feature]
    case 'clearance':
      return [measurand.hole, measurand.shaft]
    case 'sum':
      return measurand.terms.map(({ feature }) => feature)
    case 'apart':
      return [measurand.feature, ...measurand.set]
  }
}

function operation(of: Plan, key: string): Operation {
  const found = of.operations.find((each) => each.key === key)
  if (found === undefined) throw new Error(`No operation ${key}`)
  return found
}

/** Everything that comes before an operation, itself included; fails on a cycle. */
function upTo(
  of: Plan, key: string, known = new Map<string, ReadonlySet<string>>(), path: readonly string[] = [],
): ReadonlySet<string> {
  if (path.includes(key)) throw new Error(`Cycle: ${[...path, key].join(' → ')}`)
  const found = known.get(key)
  if (found !== undefined) return found
  const before = operation(of, key).after.flatMap((each) => [...upTo(of, each, known, [...path, key])])
  const all = new Set([...before, key])
  known.set(key, all)
  return all
}

describe('a plan of any work, engine, duty and options', () => {
  it('has a route without a cycle, whose steps name only steps that exist', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const made = plan(input)
        for (const { key } of made.operations) expect(upTo(made, key).has('receive')).toBe(true)
      }),
      { numRuns: 40 },
    )
  })

  it('judges every requirement in exactly one operation', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const made = plan(input)
        const judged = made.operations.flatMap(({ requirements }) => requirements)
        expect([...judged].sort()).toEqual(made.requirements.map(({ key }) => key).sort())
        expect(new Set(judged).size).toBe(judged.length)
      }),
      { numRuns: 40 },
    )
  })

  it('measures every feature of a requirement where it is judged or before', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const made = plan(input)
        for (const judging of made.operations) {
          const measured = new Set(
            [...upTo(made, judging.key)].flatMap((key) => operation(made, key).features.map(featureKey)),
          )
          for (const requirement of made.requirements.filter(({ key }) =>
            judging.requirements.includes(key),
          )) {
            const missing = referencesOf(requirement.measurand)
              .map(featureKey)
              .filter((key) => !measured.has(key))
            expect(missing, `${requirement.key} at ${judging.key}`).toEqual([])
          }
        }
      }),
      { numRuns: 40 },
    )
  })

  it('defines every feature that an operation measures, each point once', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const made = plan(input)
        const defined = new Map(made.features.map((feature) => [featureKey(feature), feature]))
        for (const reference of made.operations.flatMap(({ features }) => features)) {
          const points = defined.get(featureKey(reference))?.points.map(({ key }) => key) ?? []
          expect(points.length, featureKey(reference)).toBeGreaterThan(0)
          expect(new Set(points).size).toBe(points.length)
        }
      }),
      { numRuns: 20 },
    )
  })

  it('washes before it measures for fitting and before it assembles', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const made = plan(input)
        for (const { key, stage } of made.operations) {
          if (stage === 'fitting') expect(upTo(made, key).has('wash-for-measuring'), key).toBe(true)
          if (stage === 'assembly') expect(upTo(made, key).has('final-wash'), key).toBe(true)
          if (stage === 'inspection' || stage === 'machining') {
            expect(upTo(made, key).has('strip-wash'), key).toBe(true)
          }
        }
      }),
      { numRuns: 20 },
    )
  })

  it('gives every requirement a why with its numbers, and limits in order', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        for (const { key, why, limits } of plan(input).requirements) {
          expect(why.worked.length, key).toBeGreaterThan(0)
          expect(why.source, key).not.toBe('')
          if (limits.low !== null && limits.high !== null) expect(limits.low, key).toBeLessThan(limits.high)
        }
      }),
      { numRuns: 20 },
    )
  })
})

describe('the short block of a V8', () => {
  const made = plan(planInput(v8, v8Parts))

  it('takes 45 to 49 hours with everything ordered', () => {
    const hours = made.operations.reduce((sum, { minutes }) => sum + minutes, 0) / 60
    expect(hours).toBeGreaterThan(45)
    expect(hours).toBeLessThan(49.5)
  })

  it('pairs each rod bearing with its own part of the shared crankpin', () => {
    const fifth = made.requirements.find(({ key }) => key === 'rod-bearing/5')
    expect(fifth?.measurand).toMatchObject({
      shaft: { feature: 'rod-journal-1' },
      hole: { place: 'rod-bearing/5' },
    })
    const stations = (place: string) =>
      made.features.find((feature) => feature.place === place)?.points.map((p) => p.station)
    expect(stations('rod-bearing/1')).toEqual(['front', 'front-inner'])
    expect(stations('rod-bearing/5')).toEqual(['rear-inner', 'rear'])
  })

  it('moves through a bore top to bottom, turns, and comes back up', () => {
    const first = made.features.find(({ feature }) => feature === 'bore-1')
    expect(first?.points.map(({ key }) => key)).toEqual([
      'top/thrust',
      'middle/thrust',
      'bottom/thrust',
      'bottom/pin',
      'middle/pin',
      'top/pin',
    ])
  })

  it('says which way round every rod and piston goes in', () => {
    const titles = operation(made, 'pistons-on-rods').observations.map(({ title }) => title)
    expect(titles).toContain('Cylinder 1: front mark to the front, wide chamfer to the front')
    expect(titles).toContain('Cylinder 5: front mark to the front, wide chamfer to the back')
  })

  it('asks for two signatures where one slip costs an engine', () => {
    const two = made.operations.filter(({ signatures }) => signatures === 2).map(({ key }) => key)
    expect(two).toEqual(
      expect.arrayContaining(['bore', 'plugs', 'install-crank', 'pistons-on-rods', 'final-rod-bolts']),
    )
  })

  it('raises nothing against figures that go together, but asks once for the sheets of all bolts, and for the crank’s weight', () => {
    expect(made.findings.map(({ title }) => title)).toEqual([
      'Residual unbalance of the crankshaft: maker’s sheet needed', 'Rod bolts; main cap bolts: makers’ sheets needed',
    ])
  })
})

describe('a route', () => {
  it('adds a support rail and its check when the pin bore opens the oil groove', () => {
    const piston = { ...v8Parts.piston, compressionHeight: inches(1.125) }
    const made = plan(planInput(v8, { ...v8Parts, piston }))
    expect(operation(made, 'support-rails').requirements).toContain('oil-ring-side-clearance/8')
    expect(upTo(made, 'ring-gaps').has('support-rails')).toBe(true)
    expect(plan(planInput(v8, v8Parts)).operations.some(({ key }) => key === 'support-rails')).toBe(false)
  })

  it('leaves boring out when nothing is oversize, and honing then follows decking', () => {
    const input = planInput(v8, v8Parts)
    const made = plan({ ...input, options: { ...input.options, oversize: false } })
    expect(made.operations.some(({ key }) => key === 'bore')).toBe(false)
    expect(operation(made, 'hone-bores').after).toEqual(['deck', 'receive-parts'])
  })

  it('tries a stroked engine together before it is balanced', () => {
    const input = planInput(v8, v8Parts)
    const stroked = plan({ ...input, options: { ...input.options, stroked: true } })
    expect(upTo(stroked, 'balance').has('trial-assembly')).toBe(true)
    expect(upTo(plan(input), 'trial-assembly').has('balance')).toBe(true)
  })

  it('spins an inline crank bare and heats rods for pressed pins', () => {
    const made = plan(planInput(inlineFour, metricParts))
    expect(operation(made, 'balance').title).toContain('bare')
    expect(operation(made, 'pistons-on-rods').title).toBe('Heat rods and press pins')
    expect(made.requirements.some(({ fit }) => fit === 'pin-in-rod')).toBe(false)
    expect(made.requirements.filter(({ fit }) => fit === 'pressed-pin-in-rod')).toHaveLength(4)
  })

  it('follows the engine’s size in its minutes', () => {
    const minutes = (input: PlanInput) =>
      plan(input).operations.reduce((sum, each) => sum + each.minutes, 0)
    const [eight, six, four, , one] = testPlans.map(minutes)
    expect([eight, six, four, one]).toEqual([eight, six, four, one].toSorted((a, b) => (b ?? 0) - (a ?? 0)))
  })
})
