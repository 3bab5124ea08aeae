import { nanometresOf } from '../exact/length.ts'
import { deckClearanceAt } from '../features/references.ts'
import { deckClearance } from '../geometry/deck-stack.ts'
import {
  FROM_MEMORY,
  guardParameter,
  limitsOf,
  parameter,
  reading,
  remedy,
  say,
  THOUSANDTH,
} from './building-blocks.ts'
import type { ComputedRule, FitContext, FitDefinition, ParameterReader } from './fit-definition.ts'

const STACK = 'deck height − (stroke ÷ 2 + rod length + compression height)'

/**
 * Piston below deck. With the gasket known, quench sets the low limit; without it, the stack is what to
 * expect.
 */
export const deckClearanceFit: FitDefinition = {
  key: 'deck-clearance',
  title: 'Deck clearance',
  critical: false,
  judgedAt: ['trial-assembly'],
  parameters: [
    parameter('steel', 'Least quench, steel rods', 'length', 35 * THOUSANDTH, FROM_MEMORY),
    parameter('aluminium', 'Least quench, aluminium rods', 'length', 55 * THOUSANDTH, FROM_MEMORY),
    parameter(
      'spread',
      'Expected on each side of the computed stack',
      'length',
      5 * THOUSANDTH,
      FROM_MEMORY,
    ),
    guardParameter('accepted'),
  ],
  lines(context, read) {
    const rule = ruleFor(context, read)
    return context.cylinders.map(({ cylinder }) => ({
      position: cylinder,
      title: `Piston ${cylinder} below deck`,
      quantity: 'length',
      measurand: reading(deckClearanceAt(cylinder), 'mean'),
      rule,
      remedy: {
        low: remedy('investigate', null, 'A thicker gasket, or a piston with less compression height.'),
        high: remedy('deck', null, 'Deck the block from the main-bore centreline.'),
      },
    }))
  },
}

function ruleFor(context: FitContext, read: ParameterReader): ComputedRule {
  const { engine, parts, gasketThickness } = context
  const stack = deckClearance(engine, parts.rod.length, parts.piston.compressionHeight)
  const spread = read('spread')
  const expected = { adviceLow: stack - spread, adviceHigh: stack + spread, target: stack }
  const stackLine =
    `Stack: ${say(engine.deckHeight)} − (half of ${say(engine.stroke)} + ${say(parts.rod.length)} + ` +
    `${say(parts.piston.compressionHeight)}) = ${say(stack)}`
  if (gasketThickness === null) {
    return {
      kind: 'computed',
      limits: limitsOf(expected),
      formula:
        `${STACK}; no limit while the gasket is not chosen`,
      worked: [stackLine],
    }
  }
  const quench = read(parts.rod.material)
  const low = nanometresOf(quench - gasketThickness)
  return {
    kind: 'computed',
    limits: limitsOf({ ...expected, low }),
    formula:
      `least quench − compressed gasket; expected: ${STACK}`,
    worked: [`Low: ${say(quench)} − ${say(gasketThickness)} = ${say(low)}`, stackLine],
  }
}
