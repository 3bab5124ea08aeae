import type { HeadMaterial } from '../engine/specification.ts'
import { headMaterials } from '../engine/specification.ts'
import type { Valve, ValveKind } from '../engine/valves.ts'
import { valveKinds, valveKindTitles, valvesOf } from '../engine/valves.ts'
import type { FeatureReference } from '../features/feature.ts'
import { guideBody, guideHole, seatBody, seatHole } from '../features/top-end/references.ts'
import type { RouteOptions } from '../plan/plan-types.ts'
import { between, clearance, FROM_MEMORY, guardParameter, parameter, remedy, say, TENTH } from './building-blocks.ts'
import type { ComputedRule, FitContext, FitDefinition, ParameterReader, SheetNeeded } from './fit-definition.ts'

interface Press {
  readonly key: string
  readonly title: string
  /** Starter interference in tenths: aluminium grows away from what is pressed into it. */
  readonly interference: Record<HeadMaterial, readonly [least: number, greatest: number]>
  readonly ordered: (options: RouteOptions) => boolean
  readonly judgedAt: string
  readonly hole: (valve: Valve) => FeatureReference
  readonly body: (valve: Valve) => FeatureReference
  readonly words: { readonly tight: string; readonly loose: string }
}

const presses: readonly Press[] = [
  {
    key: 'guide-in-head',
    title: 'guide pressed in its head',
    interference: { iron: [10, 20], aluminium: [15, 25] },
    ordered: ({ newGuides }) => newGuides === true,
    judgedAt: 'fit-guides',
    hole: guideHole,
    body: guideBody,
    words: { tight: 'Ream the hole for this guide.', loose: 'Fit a guide that is larger outside.' },
  },
  {
    key: 'seat-in-head',
    title: 'seat ring pressed in its head',
    interference: { iron: [30, 50], aluminium: [50, 70] },
    ordered: ({ newSeats }) => newSeats === true,
    judgedAt: 'cut-seats',
    hole: seatHole,
    body: seatBody,
    words: {
      tight: 'Cut the counterbore for this ring.',
      loose: 'Cut for an oversize ring: a ring that drops wrecks the engine.',
    },
  },
]

/** What is driven into a head and must never come out: guides and seat rings, where new ones are ordered. */
export const pressedInHead: readonly FitDefinition[] = presses.flatMap((press) =>
  valveKinds.map((kind) => pressFit(press, kind)),
)

function pressFit(press: Press, kind: ValveKind): FitDefinition {
  const title = `${valveKindTitles[kind]} ${press.title}`
  return {
    key: `${kind}-${press.key}`,
    title,
    critical: true,
    judgedAt: [press.judgedAt],
    parameters: [
      ...headMaterials.flatMap((material) => [
        parameter(`${material}-least`, `Least interference, ${material}`, 'length', press.interference[material][0] * TENTH, FROM_MEMORY),
        parameter(`${material}-greatest`, `Greatest interference, ${material}`, 'length', press.interference[material][1] * TENTH, FROM_MEMORY),
      ]),
      guardParameter('accepted'),
    ],
    lines(context, read) {
      if (!press.ordered(context.options)) return []
      const rule = ruleFor(context, read)
      return valvesOf(context.engine, kind).map((valve) => ({
        position: valve.number,
        title: `${title} ${valve.number}`,
        quantity: 'length',
        measurand: clearance(press.hole(valve), press.body(valve), 'overall'),
        rule,
        remedy: {
          low: remedy('hone', press.hole(valve), press.words.tight),
          high: remedy('replace', null, press.words.loose),
        },
      }))
    },
  }
}

function ruleFor({ engine }: FitContext, read: ParameterReader): ComputedRule | SheetNeeded {
  const material = engine.head?.material
  if (material === undefined) {
    return { kind: 'sheet-needed', reason: 'Nobody has said whether the heads are iron or aluminium.' }
  }
  const [least, greatest] = [read(`${material}-least`), read(`${material}-greatest`)]
  return {
    kind: 'computed',
    limits: between(-greatest, -least),
    formula: 'hole − body, negative by the interference for this material',
    worked: [`Interference in ${material}: ${say(least)} to ${say(greatest)}`],
  }
}
