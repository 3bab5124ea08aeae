import { isInBlock } from '../engine/valves.ts'
import type { FeatureReference } from '../features/feature.ts'
import { pickUpToPan } from '../features/references.ts'
import { camEndPlay } from '../features/top-end/references.ts'
import type { RemedyRule } from '../judging/requirement.ts'
import { FROM_MEMORY, guardParameter, limitsOf, parameter, reading, remedy, say, THOUSANDTH } from './building-blocks.ts'
import type { FitContext, FitDefinition } from './fit-definition.ts'

interface Single {
  readonly key: string
  readonly title: string
  /** Starter figures in thousandths. */
  readonly low: number
  readonly target: number
  readonly high: number
  readonly judgedAt: string
  readonly feature: FeatureReference
  readonly occurs: (context: FitContext) => boolean
  readonly remedy: { readonly low: RemedyRule; readonly high: RemedyRule }
}

const singles: readonly Single[] = [
  {
    key: 'cam-end-play',
    title: 'Camshaft end play',
    low: 2,
    target: 5,
    high: 10,
    judgedAt: 'camshaft',
    feature: camEndPlay,
    // An overhead camshaft runs in its head: its maker's sheet says.
    occurs: ({ engine }) => isInBlock(engine),
    remedy: {
      low: remedy('shim', null, 'Shim the thrust plate out, or dress the back of the gear.'),
      high: remedy('replace', null, 'Fit a new thrust plate, or a button of the right length.'),
    },
  },
  {
    key: 'pick-up-to-pan',
    title: 'Pick-up to pan',
    low: 250,
    target: 375,
    high: 500,
    judgedAt: 'oil-pump',
    feature: pickUpToPan,
    occurs: () => true,
    remedy: {
      low: remedy('investigate', null, 'Set the pick-up deeper on its pump, or fit the pick-up of this pan.'),
      high: remedy('investigate', null, 'Fit the pick-up of this pan: one that hangs high draws air.'),
    },
  },
]

/** One reading on the whole engine between fixed limits: the camshaft's play and the depth of the pick-up. */
export const camAndPump: readonly FitDefinition[] = singles.map((single) => ({
  key: single.key,
  title: single.title,
  critical: false,
  judgedAt: [single.judgedAt],
  parameters: [
    parameter('low', 'Least', 'length', single.low * THOUSANDTH, FROM_MEMORY),
    parameter('high', 'Greatest', 'length', single.high * THOUSANDTH, FROM_MEMORY),
    parameter('target', 'Target', 'length', single.target * THOUSANDTH, FROM_MEMORY),
    guardParameter('accepted'),
  ],
  lines(context, read) {
    if (!single.occurs(context)) return []
    const [low, high, target] = [read('low'), read('high'), read('target')]
    return [
      {
        position: null,
        title: single.title,
        quantity: 'length',
        measurand: reading(single.feature, 'each'),
        rule: {
          kind: 'computed',
          limits: limitsOf({ low, high, target }),
          formula: 'the reading, between fixed limits',
          worked: [`Low ${say(low)}, high ${say(high)}, target ${say(target)}`],
        },
        remedy: single.remedy,
      },
    ]
  },
}))
