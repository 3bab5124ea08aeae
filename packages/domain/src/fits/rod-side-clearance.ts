import { rodSideClearance as sideClearanceOn } from '../features/references.ts'
import {
  between,
  FROM_MEMORY,
  guardParameter,
  parameter,
  reading,
  remedy,
  say,
  THOUSANDTH,
} from './building-blocks.ts'
import type {
  ComputedRule,
  FitContext,
  FitDefinition,
  ParameterReader,
  SheetNeeded,
} from './fit-definition.ts'

/** Side room of all rods on one crankpin: width between the cheeks less the rods. */
export const rodSideClearance: FitDefinition = {
  key: 'rod-side-clearance',
  title: 'Rod side clearance',
  critical: false,
  judgedAt: ['trial-assembly'],
  parameters: [
    parameter('two-steel-low', 'Least, two steel rods', 'length', 8 * THOUSANDTH, FROM_MEMORY),
    parameter('two-steel-high', 'Greatest, two steel rods', 'length', 20 * THOUSANDTH, FROM_MEMORY),
    parameter('two-aluminium-low', 'Least, two aluminium rods', 'length', 15 * THOUSANDTH, FROM_MEMORY),
    parameter('two-aluminium-high', 'Greatest, two aluminium rods', 'length', 30 * THOUSANDTH, FROM_MEMORY),
    parameter('one-rod-low', 'Least, one rod', 'length', 6 * THOUSANDTH, FROM_MEMORY),
    parameter('one-rod-high', 'Greatest, one rod', 'length', 14 * THOUSANDTH, FROM_MEMORY),
    guardParameter('accepted'),
  ],
  lines(context, read) {
    const rule = ruleFor(context, read)
    return Array.from({ length: context.engine.rodJournals.count }, (_, index) => index + 1).map(
      (journal) => ({
        position: journal,
        title: `Rod side clearance on rod journal ${journal}`,
        quantity: 'length',
        measurand: reading(sideClearanceOn(journal), 'each'),
        rule,
        remedy: {
          low: remedy(
            'face',
            null,
            'Face the rods on their plain sides; never touch the fillet side’s chamfer.',
          ),
          high: remedy(
            'replace',
            null,
            'Fit wider rods, or have the crankpin’s cheeks welded and reground.',
          ),
        },
      }),
    )
  },
}

function ruleFor({ engine, parts }: FitContext, read: ParameterReader): ComputedRule | SheetNeeded {
  if (engine.pinSharing === 'fork-and-blade') {
    return { kind: 'sheet-needed', reason: 'Fork-and-blade rods have no general side clearance.' }
  }
  const two = engine.pinSharing === 'two-plain-rods'
  if (!two && parts.rod.material === 'aluminium') {
    return {
      kind: 'sheet-needed',
      reason: 'A single aluminium rod on its pin has no general side clearance.',
    }
  }
  const prefix = two ? `two-${parts.rod.material}` : 'one-rod'
  const [low, high] = [read(`${prefix}-low`), read(`${prefix}-high`)]
  const rods = two ? `Two ${parts.rod.material} rods` : 'One rod'
  return {
    kind: 'computed',
    limits: between(low, high),
    formula: 'width between cheeks − rods on the pin, between the limits for their number and material',
    worked: [`${rods} on the pin: low ${say(low)}, high ${say(high)}`],
  }
}
