import type { Duty } from '../engine/duty.ts'
import type { CompressionRing } from '../features/references.ts'
import { endGap } from '../features/references.ts'
import {
  FROM_MEMORY,
  guardParameter,
  limitsOf,
  parameter,
  reading,
  remedy,
  say,
  sayShare,
  shareOf,
  THOUSANDTH,
} from './building-blocks.ts'
import type {
  ComputedRule,
  FitContext,
  FitDefinition,
  FitParameter,
  ParameterReader,
  SheetNeeded,
} from './fit-definition.ts'

const PUBLISHED = 'a piston maker’s ring sheet, read: 0.0045–0.0065 in per inch of bore by use'

/** Which number of the rule a duty uses. */
const dutyParameter: Record<Duty, string> = {
  street: 'street',
  restoration: 'street',
  'mild-boost': 'moderate',
  towing: 'moderate',
  sustained: 'sustained',
  'hard-boost': 'hard',
  nitrous: 'hard',
}

const parameters: readonly FitParameter[] = [
  parameter('street', 'Least, street and restoration', 'per-diameter', 4_500, PUBLISHED),
  parameter('moderate', 'Least, mild boost or towing', 'per-diameter', 5_000, PUBLISHED),
  parameter('sustained', 'Least, sustained load', 'per-diameter', 5_500, PUBLISHED),
  parameter('hard', 'Least, hard boost or nitrous', 'per-diameter', 6_500, PUBLISHED),
  parameter('wide', 'Advised at most above the least', 'length', 6 * THOUSANDTH, FROM_MEMORY),
  parameter('aim', 'Target above the least', 'length', THOUSANDTH, FROM_MEMORY),
  guardParameter('accepted'),
]

/** The end gap of one of the two compression rings: the second ring's least is the top ring's. */
export function ringEndGap(ring: CompressionRing, title: string): FitDefinition {
  return {
    key: `${ring}-end-gap`,
    title: `${title} end gap`,
    critical: true,
    judgedAt: ['ring-gaps'],
    parameters,
    lines(context, read) {
      const rule = ruleFor(context, read)
      return context.cylinders.map(({ cylinder }) => ({
        position: cylinder,
        title: `${title} ${cylinder} end gap`,
        quantity: 'length',
        measurand: reading(endGap(ring, cylinder), 'each'),
        rule,
        remedy: {
          low: remedy(
            'file',
            endGap(ring, cylinder),
            'File one end, square and inward; deburr and measure again.',
          ),
          high: remedy('replace', null, 'Try another ring of the set, or one made to be filed.'),
        },
      }))
    },
  }
}

function ruleFor({ engine, parts, duty }: FitContext, read: ParameterReader): ComputedRule | SheetNeeded {
  if (parts.piston.alloy === 'hypereutectic') {
    return {
      kind: 'sheet-needed',
      reason: 'A hypereutectic piston holds its rings hotter: the gap stands on its maker’s sheet.',
    }
  }
  const share = read(dutyParameter[duty])
  const low = shareOf(engine.bore, share)
  return {
    kind: 'computed',
    limits: limitsOf({ low, target: low + read('aim'), adviceHigh: low + read('wide') }),
    formula: 'bore diameter × gap per unit of diameter for the duty; no high limit, only advice',
    worked: [`Least: ${say(engine.bore)} × ${sayShare(share)} = ${say(low)}`],
  }
}
