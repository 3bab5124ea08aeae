import { isBoosted, isSustained } from '../engine/duty.ts'
import type { EngineSpecification, PistonAlloy } from '../engine/specification.ts'
import { bore, skirt } from '../features/references.ts'
import type { PlanFinding } from '../plan/plan-types.ts'
import {
  between,
  clearance,
  FROM_MEMORY,
  guardParameter,
  parameter,
  remedy,
  say,
  sayShare,
  shareOf,
} from './building-blocks.ts'
import type {
  ComputedRule,
  FitContext,
  FitDefinition,
  ParameterReader,
  SheetNeeded,
} from './fit-definition.ts'

/** A piston in its bore: alloy, bore size and duty decide, for a hotter piston grows more. */
export const pistonInBore: FitDefinition = {
  key: 'piston-in-bore',
  title: 'Piston in bore',
  critical: true,
  judgedAt: ['hone-bores'],
  parameters: [
    ...alloyParameters('cast', 500, 750),
    ...alloyParameters('hypereutectic', 450, 600),
    ...alloyParameters('4032', 600, 900),
    ...alloyParameters('2618', 900, 1_200),
    parameter('boost', 'Added to both limits when boosted', 'percent', 25, FROM_MEMORY),
    parameter('sustained-low', 'Added to the low limit under sustained load', 'percent', 15, FROM_MEMORY),
    parameter('sustained-high', 'Added to the high limit under sustained load', 'percent', 25, FROM_MEMORY),
    guardParameter('guarded-where-wide'),
  ],
  lines(context, read) {
    const rule = ruleFor(context, read)
    return context.cylinders.map(({ cylinder }) => ({
      position: cylinder,
      title: `Piston in bore ${cylinder}`,
      quantity: 'length',
      measurand: clearance(bore(cylinder), skirt(cylinder), 'overall'),
      rule,
      remedy: {
        low: remedy(
          'hone',
          bore(cylinder),
          'Hone with the torque plate on; let the block cool before the last reading.',
        ),
        high: remedy('replace', null, 'Fit a larger or coated piston, or sleeve the bore.'),
      },
    }))
  },
  findings: ({ parts, duty }) => (duty === 'nitrous' ? nitrousFinding(parts.piston.alloy) : []),
}

function alloyParameters(alloy: PistonAlloy, low: number, high: number) {
  return [
    parameter(`${alloy}-low`, `Least, ${alloy} piston`, 'per-diameter', low, FROM_MEMORY),
    parameter(`${alloy}-high`, `Greatest, ${alloy} piston`, 'per-diameter', high, FROM_MEMORY),
  ]
}

function ruleFor({ engine, parts, duty }: FitContext, read: ParameterReader): ComputedRule | SheetNeeded {
  const special = outsideTheRule(engine)
  if (special !== null) return { kind: 'sheet-needed', reason: `The piston ${special} has no general clearance.` }
  const { alloy } = parts.piston
  const [lowPercent, highPercent] = isBoosted(duty)
    ? [100 + read('boost'), 100 + read('boost')]
    : isSustained(duty)
      ? [100 + read('sustained-low'), 100 + read('sustained-high')]
      : [100, 100]
  const work = (side: 'low' | 'high', percent: number) => {
    const share = read(`${alloy}-${side}`)
    const limit = shareOf(engine.bore, share, percent)
    const factor = percent === 100 ? '' : ` × ${percent} %`
    return { limit, line: `${say(engine.bore)} × ${sayShare(share)}${factor} = ${say(limit)}` }
  }
  const [low, high] = [work('low', lowPercent), work('high', highPercent)]
  return {
    kind: 'computed',
    limits: between(low.limit, high.limit),
    formula:
      'bore diameter × clearance per unit of diameter for the alloy × duty factor; ' +
      'bore less piston at its gauge point',
    worked: [`Low: ${low.line}`, `High: ${high.line}`],
  }
}

/** Pistons that only their maker can give a clearance: from memory. */
function outsideTheRule({ cooling, boreSurface, cycle }: EngineSpecification): string | null {
  if (cooling === 'air') return 'of an air-cooled engine'
  if (boreSurface === 'plated') return 'in a plated bore'
  return cycle === 'two-stroke' ? 'of a two-stroke engine' : null
}

function nitrousFinding(alloy: PistonAlloy): readonly PlanFinding[] {
  if (alloy !== 'cast' && alloy !== 'hypereutectic') return []
  return [
    {
      key: 'nitrous-on-cast-pistons',
      severity: 'stops',
      title: 'Cast pistons with nitrous',
      sentence: `Under nitrous a ${alloy} piston breaks its lands sooner than a forged one (from memory).`,
      worked: [],
      remedy: 'Choose forged pistons, or have the owner decide with the customer.',
    },
  ]
}
