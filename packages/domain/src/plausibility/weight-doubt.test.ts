import { describe, expect, it } from 'vitest'
import { pistonWeight, smallEndWeight } from '../features/references.ts'
import { springLoad } from '../features/top-end/references.ts'
import { valvesOf } from '../engine/valves.ts'
import { plan } from '../plan/plan.ts'
import type { FeatureReference } from '../features/feature.ts'
import { featureKey } from '../features/feature.ts'
import { planInput, v8, v8Parts } from '../testing/engines.ts'
import { doubtsOfTaken } from './doubts-of-taken.ts'

const made = plan(planInput(v8, v8Parts, {
  work: 'full-rebuild',
  sheets: [{
    fit: 'intake-spring-load', level: 'part-maker', source: 'a card, invented',
    limits: { low: 480_000, high: 560_000, target: 520_000, adviceLow: null, adviceHigh: null },
  }],
}))

/** The doubts about one value typed at its step, the like of it weighed before. */
function rules(reference: FeatureReference, value: number, before: readonly (readonly [FeatureReference, number])[] = []) {
  const operation = made.operations.find(({ features }) => features.some((one) => featureKey(one) === featureKey(reference)))
  const definition = made.features.find((one) => featureKey(one) === featureKey(reference))
  const point = definition?.points[0]?.key
  if (operation === undefined || definition === undefined || point === undefined) throw new Error('nobody measures that')
  const doubts = doubtsOfTaken(
    {
      definition, point, value, passNumber: 1, isSetOnMate: false, state: [], by: 'A', standardUncertainty: 0, settingSize: null, warmth: null, opensPass: true,
    },
    {
      operation, features: made.features, requirements: made.requirements.filter(({ key }) => operation.requirements.includes(key)),
      placed: made.features.map(({ place }) => ({ place, partId: place })), bore: v8.bore,
      passes: before.map(([one, known]) => ({
        partId: one.place, feature: one.feature, number: 1, operationKey: operation.key, setOn: null, isVoid: false,
        standardUncertainty: 0, state: [], setting: null, temperatures: null, material: null,
        readings: [{ id: one.place, point, value: known, supersedes: null, by: 'A' }],
      })),
    },
    'inch',
  )
  return doubts.map(({ rule, outcome }) => `${rule} ${outcome}`)
}

describe('a weight', () => {
  it('of a piston is asked about outside 150 to 1200 g, and of nothing else', () => {
    expect(rules(pistonWeight(1), 520_000)).toEqual([])
    expect(rules(pistonWeight(1), 149_000)).toEqual(['range ask'])
    expect(rules(pistonWeight(1), 1_201_000)).toEqual(['range ask'])
    expect(rules(smallEndWeight(1), 110_000)).toEqual([])
  })

  it('28 times off from its like is ounces for grams, ten or a thousand times a decimal place', () => {
    const like = [[pistonWeight(2), 520_000], [pistonWeight(3), 521_000]] as const
    expect(rules(pistonWeight(1), 18_350, like)).toEqual(['unit block'])
    expect(rules(pistonWeight(1), 52_000, like)).toEqual(['decimal-place block'])
    expect(rules(pistonWeight(1), 520, like)).toEqual(['decimal-place block'])
    expect(rules(pistonWeight(1), 523_000, like)).toEqual([])
  })

  it('of nothing or less is believed of nothing', () => {
    expect(rules(smallEndWeight(1), 0)).toEqual(['range block'])
    expect(rules(pistonWeight(1), -520_000)).toEqual(['range block'])
  })
})

describe('the load of a spring', () => {
  const [first] = valvesOf(v8, 'intake').map(springLoad)

  it('4.45 times what its card says is newtons for pounds-force, and is asked about', () => {
    expect(first && rules(first, 515_000)).toEqual([])
    expect(first && rules(first, 520_000 * 4.448)).toEqual(['unit ask'])
    expect(first && rules(first, 5_200_000)).toEqual(['decimal-place ask'])
  })
})
