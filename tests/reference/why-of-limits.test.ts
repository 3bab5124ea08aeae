import { describe, expect, it } from 'vitest'
import { fits, plan, type PlanInput, type Requirement } from '../../packages/domain/src/index.ts'
import { demoPlans } from './why-of-limits/demo-plans.ts'
import { changeOfSheets, changesOfEngine, changesOfRules } from './why-of-limits/one-change.ts'
import { expectedLimits, type Expected, type Named, type OwnFit } from './why-of-limits/own-arithmetic.ts'
import { ownFits } from './why-of-limits/own-fits.ts'
import { makersOnly } from './why-of-limits/own-top-end.ts'

/** The fits that some step of a plan's route judges: a head service has none of a crank. */
function fitsJudgedIn(input: PlanInput): ReadonlySet<string> {
  const steps = new Set(plan(input).operations.map(({ key }) => key))
  return new Set(fits.filter(({ judgedAt }) => judgedAt.some((step) => steps.has(step))).map(({ key }) => key))
}

function ownFitOf(fit: string): OwnFit {
  const own = ownFits[fit]
  if (own === undefined) throw new Error(`No arithmetic of the test’s own covers ${fit}.`)
  return own
}

const wordsOf = ({ formula }: OwnFit, input: PlanInput) => (typeof formula === 'string' ? formula : formula(input))

/** The lines of each fit that a plan has. */
function linesByFit(input: PlanInput): ReadonlyMap<string, readonly Requirement[]> {
  const lines = new Map<string, Requirement[]>()
  for (const requirement of plan(input).requirements) {
    lines.set(requirement.fit, [...(lines.get(requirement.fit) ?? []), requirement])
  }
  return lines
}

const has = (expected: Expected) => expected !== 'none' && expected !== 'sheet'

/** Every line of the fit stands at the limits worked out here, and there is no line where there should be none. */
function expectWorkedOut(fit: string, lines: readonly Requirement[] | undefined, expected: Expected, words: string): void {
  if (!has(expected)) {
    expect(lines, `${fit}: ${words}`).toBeUndefined()
    return
  }
  expect(lines?.length, `${fit}: ${words}`).toBeGreaterThan(0)
  for (const { key, limits } of lines ?? []) expect(limits, `${key}: ${words}`).toEqual(expected)
}

describe(
  'For each requirement of each demo job: change one input of its why (duty, bore, alloy, rule) and the limit changes as '
    + 'the named formula says, computed in the test on its own',
  () => {
    it.each(demoPlans)('$job', ({ input }) => {
      const lines = linesByFit(input)
      const changes = [...changesOfEngine(input), ...changesOfRules(input), changeOfSheets(input)]
        .map((change) => ({ ...change, lines: linesByFit(change.input) }))
      const judged = fitsJudgedIn(input)
      for (const { key: fit } of fits) {
        if (!judged.has(fit)) {
          expectWorkedOut(fit, lines.get(fit), 'none', 'no step judges it')
          continue
        }
        const own = ownFitOf(fit)
        const before = expectedLimits(fit, own, input)
        expectWorkedOut(fit, lines.get(fit), before, 'as planned')
        const isSheet = input.sheets.some((sheet) => sheet.fit === fit)
        for (const { why } of lines.get(fit) ?? []) {
          expect(why).toMatchObject({ rule: fit, formula: isSheet ? 'as the maker’s sheet says' : wordsOf(own, input) })
        }

        const moved = new Set<Named>()
        for (const change of changes) {
          const expected = expectedLimits(fit, own, change.input)
          expectWorkedOut(fit, change.lines.get(fit), expected, `${change.named}, ${change.words}`)
          if (JSON.stringify(expected) !== JSON.stringify(before)) moved.add(change.named)
        }
        if (!has(before)) continue
        const named: readonly Named[] = isSheet ? ['sheet'] : [...own.named(input), 'sheet']
        expect([...moved], `${fit} moves with ${named.join(', ')}`).toEqual(expect.arrayContaining([...named]))
      }
    }, 60_000)
  },
)

describe('the fits of the demo', () => {
  it('are all fits there are, worked out by the test’s own sums; each that a rule can work out stands on some demo job', () => {
    expect(Object.keys(ownFits).toSorted()).toEqual(fits.map(({ key }) => key).toSorted())
    const onSomeJob = new Set(demoPlans.flatMap(({ input }) => [...linesByFit(input).keys()]))
    const ruled = Object.entries(ownFits).filter(([, own]) => own !== makersOnly).map(([key]) => key)
    expect(ruled.filter((key) => !onSomeJob.has(key))).toEqual([])
  })

  it('stand on jobs of five kinds of work', () => {
    expect(new Set(demoPlans.map(({ input }) => input.work)).size).toBeGreaterThanOrEqual(5)
  })
})
