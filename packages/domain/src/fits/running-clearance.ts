import { isHot } from '../engine/duty.ts'
import type { ValveKind } from '../engine/valves.ts'
import { camBearingsOf, liftersOf, valveKindTitles, valvesOf } from '../engine/valves.ts'
import type { FeatureReference } from '../features/feature.ts'
import { camBearing, camJournal, lifterBody, lifterBore, valveGuide, valveStem } from '../features/top-end/references.ts'
import type { RemedyRule } from '../judging/requirement.ts'
import { between, clearance, FROM_MEMORY, guardParameter, parameter, remedy, say, TENTH } from './building-blocks.ts'
import type { FitContext, FitDefinition } from './fit-definition.ts'

/** One shaft in one hole, and what is done when they do not suit each other. */
interface Pair {
  readonly position: number
  readonly hole: FeatureReference
  readonly shaft: FeatureReference
  readonly low: RemedyRule
  readonly high: RemedyRule
}

interface Family {
  readonly key: string
  readonly title: string
  /** Starter limits in tenths. */
  readonly limits: readonly [low: number, high: number]
  /** Tenths added to both limits when boosted, with nitrous or under sustained load; null where heat changes nothing. */
  readonly hot: number | null
  readonly judgedAt: string
  readonly pairing: 'overall' | 'by-station'
  readonly pairs: (context: FitContext) => readonly Pair[]
}

const families: readonly Family[] = [
  stemFamily('intake', [10, 25], null),
  // An exhaust stem runs hotter and needs more room.
  stemFamily('exhaust', [15, 30], 5),
  {
    key: 'cam-bearing',
    title: 'Cam bearing clearance',
    limits: [20, 40],
    hot: null,
    judgedAt: 'cam-bearings',
    pairing: 'by-station',
    pairs: ({ engine }) =>
      camBearingsOf(engine).map((journal) => ({
        position: journal,
        hole: camBearing(journal),
        shaft: camJournal(journal),
        low: remedy('investigate', null, 'Look for a burr or a bearing driven in crooked, before a journal is polished.'),
        high: remedy('replace', null, 'Fit a new bearing, or a camshaft with full journals.'),
      })),
  },
  {
    key: 'lifter-in-bore',
    title: 'Lifter in its bore',
    limits: [10, 20],
    hot: null,
    judgedAt: 'cam-bearings',
    pairing: 'overall',
    pairs: ({ engine }) =>
      liftersOf(engine).map((number) => ({
        position: number,
        hole: lifterBore(number),
        shaft: lifterBody(number),
        low: remedy('hone', lifterBore(number), 'A few strokes of a fine hone; every chip comes out of the valley.'),
        high: remedy('replace', null, 'Bush the bore, or fit an oversize lifter.'),
      })),
  },
]

/** Shafts of the valve train in their holes, each between two lengths: stems, cam journals, lifters. */
export const runningClearances: readonly FitDefinition[] = families.map((family) => ({
  key: family.key,
  title: family.title,
  critical: false,
  judgedAt: [family.judgedAt],
  parameters: [
    parameter('low', 'Least clearance', 'length', family.limits[0] * TENTH, FROM_MEMORY),
    parameter('high', 'Greatest clearance', 'length', family.limits[1] * TENTH, FROM_MEMORY),
    ...(family.hot === null
      ? []
      : [parameter('hot', 'Added when boosted, with nitrous or sustained', 'length', family.hot * TENTH, FROM_MEMORY)]),
    guardParameter('guarded-where-wide'),
  ],
  lines(context, read) {
    const added = family.hot !== null && isHot(context.duty) ? read('hot') : 0
    const [low, high] = [read('low') + added, read('high') + added]
    return family.pairs(context).map((pair) => ({
      position: pair.position,
      title: `${family.title} ${pair.position}`,
      quantity: 'length',
      measurand: clearance(pair.hole, pair.shaft, family.pairing),
      rule: {
        kind: 'computed',
        limits: between(low, high),
        formula:
          family.hot === null ? 'hole − shaft, between fixed limits' : 'hole − shaft, between the limits for this duty',
        worked: [`Low ${say(low)}, high ${say(high)}`, ...(added === 0 ? [] : [`of it for heat ${say(added)}`])],
      },
      remedy: { low: pair.low, high: pair.high },
    }))
  },
}))

function stemFamily(kind: ValveKind, limits: Family['limits'], hot: Family['hot']): Family {
  return {
    key: `${kind}-stem-in-guide`,
    title: `${valveKindTitles[kind]} valve stem in guide`,
    limits,
    hot,
    judgedAt: 'fit-guides',
    pairing: 'overall',
    pairs: ({ engine }) =>
      valvesOf(engine, kind).map((valve) => ({
        position: valve.number,
        hole: valveGuide(valve),
        shaft: valveStem(valve),
        low: remedy('hone', valveGuide(valve), 'Ream or hone the guide to its own valve; brush it out and measure again.'),
        high: remedy('replace', null, 'Fit a new guide or a liner, or a valve with an oversize stem.'),
      })),
  }
}
