import { describe, expect, it } from 'vitest'
import {
  bigEndWeight, pinWeight, pistonWeight, retainersWeight, ringSetWeight, shellsWeight, smallEndWeight,
} from '../features/references.ts'
import { indexFeatures } from '../features/feature-index.ts'
import { plan } from '../plan/plan.ts'
import type { Plan, PlanInput } from '../plan/plan-types.ts'
import { definitionText } from '../plan/definition-text.ts'
import { asMeasured } from '../testing/as-measured.ts'
import { flatFour, inlineFour, metricParts, planInput, single, v6, v8, v8Parts } from '../testing/engines.ts'
import { bobweightFigures } from './bobweight-figures.ts'

/** Every cylinder alike but for its piston, one gram heavier with its number. */
function weights(cylinders: number) {
  const each = Array.from({ length: cylinders }, (_, index) => index + 1)
  return [
    ...each.flatMap((cylinder) => [
      [pistonWeight(cylinder), 500_000 + cylinder * 1_000], [pinWeight(cylinder), 120_000],
      [bigEndWeight(cylinder), 410_000], [smallEndWeight(cylinder), 170_000],
    ] as const),
    [ringSetWeight, 46_000], [retainersWeight, 2_000], [shellsWeight, 42_000],
  ] as const
}

function figuresOf(made: Plan, measured: ReturnType<typeof weights>[number][]) {
  const rule = made.operations.find(({ key }) => key === 'balance')?.bobweights
  if (rule === undefined) throw new Error('This crank is spun bare.')
  return bobweightFigures(rule, asMeasured(made, measured), indexFeatures(made.features))
}

describe('the bobweights of an engine', () => {
  const made = plan(planInput(v8, v8Parts))

  it('are one for each crankpin, from the weights of the very rods and pistons that run on it, half of what goes up and down', () => {
    const figures = figuresOf(made, [...weights(8)])
    expect(figures.map(({ cylinders }) => cylinders)).toEqual([[1, 5], [2, 6], [3, 7], [4, 8]])
    // 2 × (410 + 42) + 4 oil + half of 2 × (170 + 120 + 46 + 2) + pistons of 501 and 505 g
    expect(figures[0]?.value).toBe(904_000 + 4_000 + (676_000 + 1_006_000) / 2)
    expect(figures[3]?.value).toBe(904_000 + 4_000 + (676_000 + 1_012_000) / 2)
  })

  it('show their formula with the numbers in it', () => {
    expect(figuresOf(made, [...weights(8)])[0]?.worked).toEqual([
      'Turning: (410.0 g + 42.0 g) + (410.0 g + 42.0 g) + oil 4.0 g = 908.0 g',
      'Going up and down: (170.0 g + 501.0 g + 120.0 g + 46.0 g + 2.0 g) + (170.0 g + 505.0 g + 120.0 g + 46.0 g + 2.0 g) = 1682.0 g',
      '908.0 g + 50 % of 1682.0 g = 1749.0 g',
    ])
  })

  it('have no value while a weight is missing, and name it', () => {
    const [first, second] = figuresOf(made, weights(8).filter(([{ place }]) => place !== 'piston/5'))
    expect(first).toMatchObject({ value: null, missing: ['Weight of piston 5'] })
    expect(second?.value).not.toBeNull()
  })

  it('wait for the maker’s balance factor on any crank but a 90° V8’s', () => {
    const six = planInput(v6, v8Parts)
    expect(figuresOf(plan(six), [...weights(6)])[0]?.missing).toEqual([expect.stringContaining('balance factor')])
    const told = plan({ ...six, engine: { ...v6, crank: { balanceFactor: 366 } } })
    const figures = figuresOf(told, [...weights(6)])
    expect(figures).toHaveLength(6)
    // 410 + 42 + 4, and 36.6 % of 170 + 501 + 120 + 46 + 2
    expect(figures[0]?.value).toBe(456_000 + 307_074)
    expect(figures[0]?.source).toContain('written with the engine')
  })

  it.each([['an inline four', inlineFour, false], ['a boxer with a pin for every rod', flatFour, false], ['a single', single, true]])(
    'of %s: spun with them or bare', (_, engine, has) => {
      const step = plan(planInput(engine, metricParts)).operations.find(({ key }) => key === 'balance')
      expect(step?.bobweights !== undefined).toBe(has)
      expect(step?.title).toBe(has ? 'Match weights, balance with bobweights' : 'Match weights, spin the crank bare')
    },
  )

  it('open the signature under the balance again when they are made up another way', () => {
    const change = (input: Partial<PlanInput>) => definitionText(plan(planInput(v8, v8Parts, input)), 'balance')
    const rules = [{ fit: 'crank-unbalance', revision: 1, parameters: { factor: 52 }, source: 'the shop' }]
    expect(change({ rules })).not.toBe(change({}))
  })
})
