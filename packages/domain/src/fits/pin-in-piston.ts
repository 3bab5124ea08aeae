import { isBoosted } from '../engine/duty.ts'
import { pinBore, pinDiameter } from '../features/references.ts'
import {
  between,
  clearance,
  FROM_MEMORY,
  guardParameter,
  parameter,
  remedy,
  say,
  TENTH,
} from './building-blocks.ts'
import type { FitContext, FitDefinition, ParameterReader } from './fit-definition.ts'

const PUBLISHED =
  'US Army TM 5-6115-545-34: pin 1.5011–1.5013 in a bore of 1.5014–1.5016 in, 0.0001–0.0005 in'

/**
 * A pin in its piston: production pistons run close, forged ones need more room, and the same again for
 * boost.
 */
export const pinInPiston: FitDefinition = {
  key: 'pin-in-piston',
  title: 'Pin in piston',
  critical: true,
  judgedAt: ['fit-pins'],
  parameters: [
    parameter('low', 'Least clearance, cast piston', 'length', TENTH, PUBLISHED),
    parameter('high', 'Greatest clearance, cast piston', 'length', 5 * TENTH, PUBLISHED),
    parameter('forged-low', 'Least clearance, forged piston', 'length', 5 * TENTH, FROM_MEMORY),
    parameter('forged-high', 'Greatest clearance, forged piston', 'length', 10 * TENTH, FROM_MEMORY),
    parameter('boost', 'Added when boosted, forged piston', 'length', 2 * TENTH, FROM_MEMORY),
    parameter('pressed-low', 'Least clearance, pressed pin', 'length', 3 * TENTH, FROM_MEMORY),
    parameter('pressed-high', 'Greatest clearance, pressed pin', 'length', 8 * TENTH, FROM_MEMORY),
    guardParameter('guarded-where-wide'),
  ],
  lines(context, read) {
    const { low, high, words } = figures(context, read)
    return context.cylinders.map(({ cylinder }) => ({
      position: cylinder,
      title: `Pin in piston ${cylinder}`,
      quantity: 'length',
      measurand: clearance(pinBore(cylinder), pinDiameter(cylinder), 'overall'),
      rule: {
        kind: 'computed',
        limits: between(low, high),
        formula: 'pin bore − pin, between the limits for this piston, pin fit and duty',
        worked: [`${words}: low ${say(low)}, high ${say(high)}`],
      },
      remedy: {
        low: remedy(
          'hone',
          pinBore(cylinder),
          'Hone both bosses in line; the oiled pin slides under its own weight.',
        ),
        high: remedy('replace', null, 'Choose a larger pin of the set, or another piston.'),
      },
    }))
  },
}

function figures(
  { parts, duty }: FitContext,
  read: ParameterReader,
): { low: number; high: number; words: string } {
  if (parts.pin.fit === 'pressed') {
    return { low: read('pressed-low'), high: read('pressed-high'), words: 'Pin pressed in its rod' }
  }
  const forged = parts.piston.alloy === '4032' || parts.piston.alloy === '2618'
  if (!forged) return { low: read('low'), high: read('high'), words: 'Floating pin, cast piston' }
  const boost = isBoosted(duty) ? read('boost') : 0
  const words =
    boost === 0
      ? 'Floating pin, forged piston'
      : `Floating pin, forged piston, ${say(boost)} more for boost`
  return { low: read('forged-low') + boost, high: read('forged-high') + boost, words }
}
