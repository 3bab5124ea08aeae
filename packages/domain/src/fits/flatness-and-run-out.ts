import { isBoosted, isHot } from '../engine/duty.ts'
import { cylindersUnder, headsOf, valveKinds, valveKindTitles, valvesOf } from '../engine/valves.ts'
import type { FeatureReference } from '../features/feature.ts'
import { mainRunOut } from '../features/references.ts'
import { deckFlatness, headFlatness, seatRunOut } from '../features/top-end/references.ts'
import type { RemedyRule } from '../judging/requirement.ts'
import {
  FROM_MEMORY, guardParameter, limitsOf, parameter, reading, remedy, say, TENTH,
} from './building-blocks.ts'
import type { FitContext, FitDefinition, FitParameter } from './fit-definition.ts'

interface Place {
  readonly position: number
  readonly feature: FeatureReference
}

interface Family {
  readonly key: string
  readonly title: string
  /** Starter figures in tenths. */
  readonly target: number
  readonly high: number
  readonly judgedAt: string
  readonly places: (context: FitContext) => readonly Place[]
  readonly remedy: RemedyRule
  /** Greatest readings for other engines and duties, the first that applies before `high`. */
  readonly others: readonly { readonly parameter: FitParameter; readonly applies: (context: FitContext, position: number) => boolean }[]
}

const other = (key: string, title: string, tenths: number) =>
  parameter(key, title, 'length', tenths * TENTH, FROM_MEMORY)

/** A gasket forgives less under boost, and a long face is let be less flat as a whole. */
const faces = {
  target: 20,
  high: 30,
  others: [
    {
      parameter: other('boosted', 'Greatest, boosted or with nitrous', 20),
      applies: ({ duty }: FitContext) => isBoosted(duty) || duty === 'nitrous',
    },
    {
      parameter: other('long', 'Greatest, five cylinders or more under one head', 40),
      applies: ({ engine }: FitContext, head: number) => cylindersUnder(engine, head) > 4,
    },
  ],
}

const crank: Family = {
  key: 'crank-run-out',
  title: 'Crankshaft run-out at main',
  target: 10,
  high: 20,
  judgedAt: 'measure-crank',
  places: ({ engine }) =>
    Array.from({ length: engine.mains.count - 2 }, (_, index) => ({ position: index + 2, feature: mainRunOut(index + 2) })),
  remedy: remedy('investigate', null, 'Straighten it, test it for cracks again, and measure every journal anew; else grind or replace it.'),
  others: [
    { parameter: other('hot', 'Greatest, boosted, with nitrous or sustained', 15), applies: ({ duty }) => isHot(duty) },
  ],
}

const families: readonly Family[] = [
  ...valveKinds.map((kind): Family => ({
    key: `${kind}-seat-run-out`,
    title: `${valveKindTitles[kind]} seat run-out`,
    target: 10,
    high: 20,
    judgedAt: 'cut-seats',
    places: ({ engine }) =>
      valvesOf(engine, kind).map((valve) => ({ position: valve.number, feature: seatRunOut(valve) })),
    remedy: remedy('investigate', null, 'Check pilot and guide first, then cut the seat again from its guide.'),
    others: [],
  })),
  {
    ...faces,
    key: 'head-flatness',
    title: 'Head face flatness',
    judgedAt: 'surface-heads',
    places: ({ engine }) => headsOf(engine).map((head) => ({ position: head, feature: headFlatness(head) })),
    remedy: remedy('deck', null, 'Surface the heads alike: chambers become smaller and valves come nearer the pistons.'),
  },
  {
    ...faces,
    key: 'deck-flatness',
    title: 'Deck flatness',
    judgedAt: 'check-decks',
    places: ({ engine }) => headsOf(engine).map((head) => ({ position: head, feature: deckFlatness(head) })),
    remedy: remedy('deck', null, 'Deck both banks alike, from the main-bore centreline.'),
  },
]

/** How far the mains between the two ends may run out: only a greatest. */
export const crankRunOut = greatestOnly(crank)

/** How far a face may be from flat and a seat from running true: only a greatest. */
export const flatnessAndRunOut: readonly FitDefinition[] = families.map(greatestOnly)

function greatestOnly(family: Family): FitDefinition {
  return {
    key: family.key,
    title: family.title,
    critical: false,
    judgedAt: [family.judgedAt],
    parameters: [
      parameter('target', 'Better within', 'length', family.target * TENTH, FROM_MEMORY),
      parameter('high', 'Greatest', 'length', family.high * TENTH, FROM_MEMORY),
      ...family.others.map((each) => each.parameter),
      guardParameter('accepted'),
    ],
    lines: (context, read) =>
      family.places(context).map(({ position, feature }) => {
        const special = family.others.find(({ applies }) => applies(context, position))?.parameter
        const high = read(special?.key ?? 'high')
        const target = Math.min(read('target'), high)
        return {
          position,
          title: `${family.title} ${position}`,
          quantity: 'length',
          measurand: reading(feature, 'greatest'),
          rule: {
            kind: 'computed',
            limits: limitsOf({ high, target, adviceHigh: target }),
            formula: 'the greatest reading, at most the limit',
            worked: [`${special?.title ?? 'Greatest'}: ${say(high)}, better within ${say(target)}`],
          },
          remedy: { low: null, high: family.remedy },
        }
      }),
  }
}
