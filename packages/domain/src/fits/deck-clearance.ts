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

/** Revolutions a minute above which rods stretch enough to ask for more room; from memory. */
const FAST = 7_500

const STACK = 'deck height − (stroke ÷ 2 + rod length + compression height)'

/**
 * Piston below deck. With the gasket known, quench sets the low limit; without it, and where quench is
 * not for this engine (dished pistons, diesels, open chambers), the stack is what to expect.
 */
export const deckClearanceFit: FitDefinition = {
  key: 'deck-clearance',
  title: 'Deck clearance',
  critical: false,
  judgedAt: ['trial-assembly'],
  parameters: [
    parameter('steel', 'Least quench, steel rods', 'length', 35 * THOUSANDTH, FROM_MEMORY),
    parameter('aluminium', 'Least quench, aluminium rods', 'length', 55 * THOUSANDTH, FROM_MEMORY),
    parameter('fast', 'Added above 7,500/min', 'length', 5 * THOUSANDTH, FROM_MEMORY),
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
  const withoutQuench = whyNoQuench(context)
  if (withoutQuench !== null || gasketThickness === null) {
    return {
      kind: 'computed',
      limits: limitsOf(expected),
      formula: `${STACK}; ${withoutQuench ?? 'no limit while the gasket is not chosen'}`,
      worked: [stackLine],
    }
  }
  const quench = leastQuench(context, read)
  const low = nanometresOf(quench.least - gasketThickness)
  return {
    kind: 'computed',
    limits: limitsOf({ ...expected, low }),
    formula: `least quench − compressed gasket; expected: ${STACK}`,
    worked: [...quench.worked, `Low: ${say(quench.least)} − ${say(gasketThickness)} = ${say(low)}`, stackLine, ...untold(context)],
  }
}

/** The engines that quench is not for; from memory. */
function whyNoQuench({ engine, parts }: FitContext): string | null {
  if (parts.piston.crown === 'dished') return 'no least quench: it is not for dished pistons'
  if (engine.ignition === 'diesel') return 'no least quench: it is not for diesels'
  return engine.head?.chamber === 'open' ? 'no least quench: it is not for open chambers' : null
}

/** By the rods' material, and more where the engine turns fast: rods stretch. */
function leastQuench({ engine: { greatestSpeed }, parts }: FitContext, read: ParameterReader) {
  const least = read(parts.rod.material)
  if (greatestSpeed === undefined || greatestSpeed <= FAST) return { least, worked: [] }
  const more = read('fast')
  const sum = least + more
  return {
    least: sum,
    worked: [`Above ${inWords(FAST)}, here up to ${inWords(greatestSpeed)}: ${say(least)} + ${say(more)} = ${say(sum)}`],
  }
}

/** What nobody has told, and as what the engine is therefore judged. */
function untold({ engine, parts }: FitContext): readonly string[] {
  const assumed = [
    ...(engine.greatestSpeed === undefined ? [`a greatest speed up to ${inWords(FAST)}`] : []),
    ...(engine.head?.chamber === undefined ? ['a closed chamber'] : []),
    ...(parts.piston.crown === undefined ? ['a crown without a dish'] : []),
    ...(engine.ignition === undefined ? ['firing by a spark'] : []),
  ]
  return assumed.length === 0 ? [] : [`Not told, so taken to be: ${assumed.join(', ')}`]
}

/** 7,500/min: thousands with a comma. */
function inWords(speed: number): string {
  return `${String(speed).replace(/\B(?=\d{3}$)/, ',')}/min`
}
