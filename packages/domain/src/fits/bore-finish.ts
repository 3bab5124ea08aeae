import { boreRoughness, crosshatch } from '../features/references.ts'
import type { FeatureReference, Quantity } from '../features/feature.ts'
import { sayValue } from '../judging/say-value.ts'
import { between, FROM_MEMORY, guardParameter, parameter, reading, remedy } from './building-blocks.ts'
import type { FitDefinition } from './fit-definition.ts'

interface Finish {
  readonly key: string
  readonly title: string
  readonly quantity: Extract<Quantity, 'angle' | 'roughness'>
  readonly low: number
  readonly high: number
  readonly target: number
  readonly feature: (cylinder: number) => FeatureReference
  readonly tooLow: string
  readonly tooHigh: string
}

/** Makers of rings ask for less than this room; their sheet outranks it. */
const finishes: readonly Finish[] = [
  {
    key: 'bore-crosshatch',
    title: 'Crosshatch',
    quantity: 'angle',
    low: 20_000,
    high: 60_000,
    target: 45_000,
    feature: crosshatch,
    tooLow: 'Oil is not carried up the wall: stroke faster against the turning speed, and hone the last strokes again.',
    tooHigh: 'Oil passes the rings: stroke slower against the turning speed, and hone the last strokes again.',
  },
  {
    key: 'bore-roughness',
    title: 'Roughness Ra',
    quantity: 'roughness',
    low: 250,
    high: 600,
    target: 400,
    feature: boreRoughness,
    tooLow: 'Too smooth for the rings to seat: a few strokes with coarser stones, as far as the clearance leaves room.',
    tooHigh: 'Too rough: finish with finer stones, as far as the clearance leaves room.',
  },
]

/** What the rings run on: the angle of the stones’ marks and the roughness they leave. */
export const boreFinishes: readonly FitDefinition[] = finishes.map((finish) => ({
  key: finish.key,
  title: finish.title,
  quantity: finish.quantity,
  critical: false,
  judgedAt: ['bore-finish'],
  parameters: [
    parameter('low', 'Least', finish.quantity, finish.low, FROM_MEMORY),
    parameter('high', 'Greatest', finish.quantity, finish.high, FROM_MEMORY),
    parameter('target', 'Target', finish.quantity, finish.target, FROM_MEMORY),
    guardParameter('accepted'),
  ],
  lines({ cylinders }, read) {
    const [low, high, target] = [read('low'), read('high'), read('target')]
    const say = (value: number) =>
      `${sayValue(value, finish.quantity, 'inch')} (${sayValue(value, finish.quantity, 'millimetre')})`
    return cylinders.map(({ cylinder }) => ({
      position: cylinder,
      title: `${finish.title} of bore ${cylinder}`,
      quantity: finish.quantity,
      measurand: reading(finish.feature(cylinder), 'each'),
      rule: {
        kind: 'computed',
        limits: between(low, high, target),
        formula: 'between the limits for rings in general; the rings’ own sheet asks for less room',
        worked: [`${say(low)} to ${say(high)}, best ${say(target)}`],
      },
      remedy: {
        low: remedy('investigate', null, finish.tooLow),
        high: remedy('investigate', null, finish.tooHigh),
      },
    }))
  },
}))
