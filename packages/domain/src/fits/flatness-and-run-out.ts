import { headsOf, valveKinds, valveKindTitles, valvesOf } from '../engine/valves.ts'
import type { FeatureReference } from '../features/feature.ts'
import { deckFlatness, headFlatness, seatRunOut } from '../features/top-end/references.ts'
import type { RemedyRule } from '../judging/requirement.ts'
import {
  FROM_MEMORY, guardParameter, limitsOf, parameter, reading, remedy, say, TENTH,
} from './building-blocks.ts'
import type { FitContext, FitDefinition } from './fit-definition.ts'

interface Family {
  readonly key: string
  readonly title: string
  /** Starter figures in tenths. */
  readonly target: number
  readonly high: number
  readonly judgedAt: string
  readonly features: (context: FitContext) => readonly { position: number; feature: FeatureReference }[]
  readonly remedy: RemedyRule
}

const faces = { target: 20, high: 30 }

const families: readonly Family[] = [
  ...valveKinds.map((kind): Family => ({
    key: `${kind}-seat-run-out`,
    title: `${valveKindTitles[kind]} seat run-out`,
    target: 10,
    high: 20,
    judgedAt: 'cut-seats',
    features: ({ engine }) =>
      valvesOf(engine, kind).map((valve) => ({ position: valve.number, feature: seatRunOut(valve) })),
    remedy: remedy('investigate', null, 'Check pilot and guide first, then cut the seat again from its guide.'),
  })),
  {
    ...faces,
    key: 'head-flatness',
    title: 'Head face flatness',
    judgedAt: 'surface-heads',
    features: ({ engine }) => headsOf(engine).map((head) => ({ position: head, feature: headFlatness(head) })),
    remedy: remedy('deck', null, 'Surface the heads alike: chambers become smaller and valves come nearer the pistons.'),
  },
  {
    ...faces,
    key: 'deck-flatness',
    title: 'Deck flatness',
    judgedAt: 'check-decks',
    features: ({ engine }) => headsOf(engine).map((head) => ({ position: head, feature: deckFlatness(head) })),
    remedy: remedy('deck', null, 'Deck both banks alike, from the main-bore centreline.'),
  },
]

/** How far a face may be from flat and a seat from running true: only a greatest. */
export const flatnessAndRunOut: readonly FitDefinition[] = families.map((family) => ({
  key: family.key,
  title: family.title,
  critical: false,
  judgedAt: [family.judgedAt],
  parameters: [
    parameter('target', 'Better within', 'length', family.target * TENTH, FROM_MEMORY),
    parameter('high', 'Greatest', 'length', family.high * TENTH, FROM_MEMORY),
    guardParameter('accepted'),
  ],
  lines(context, read) {
    const [target, high] = [read('target'), read('high')]
    return family.features(context).map(({ position, feature }) => ({
      position,
      title: `${family.title} ${position}`,
      quantity: 'length',
      measurand: reading(feature, 'greatest'),
      rule: {
        kind: 'computed',
        limits: limitsOf({ high, target, adviceHigh: target }),
        formula: 'the greatest reading, at most the limit',
        worked: [`At most ${say(high)}, better within ${say(target)}`],
      },
      remedy: { low: null, high: family.remedy },
    }))
  },
}))
