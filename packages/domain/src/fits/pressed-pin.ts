import { pinDiameter, smallEnd } from '../features/references.ts'
import {
  clearance,
  COMMON_PRACTICE,
  guardParameter,
  limitsOf,
  parameter,
  remedy,
  say,
  TENTH,
} from './building-blocks.ts'
import type { FitDefinition } from './fit-definition.ts'

/** A pin pressed into its rod. Interference is a negative clearance; under the least of it the pin walks. */
export const pressedPin: FitDefinition = {
  key: 'pressed-pin-in-rod',
  title: 'Pressed pin in rod',
  critical: true,
  judgedAt: ['hone-small-ends'],
  parameters: [
    parameter('least', 'Least interference', 'length', 8 * TENTH, COMMON_PRACTICE),
    parameter('greatest', 'Greatest interference', 'length', 16 * TENTH, COMMON_PRACTICE),
    parameter('target', 'Target interference', 'length', 15 * TENTH, COMMON_PRACTICE),
    parameter('usual-least', 'Usual interference, from', 'length', 10 * TENTH, COMMON_PRACTICE),
    parameter('usual-greatest', 'Usual interference, to', 'length', 15 * TENTH, COMMON_PRACTICE),
    guardParameter('guarded-where-wide'),
  ],
  lines({ parts, cylinders }, read) {
    if (parts.pin.fit !== 'pressed') return []
    const [least, greatest, target] = [read('least'), read('greatest'), read('target')]
    return cylinders.map(({ cylinder }) => ({
      position: cylinder,
      title: `Pressed pin in rod ${cylinder}`,
      quantity: 'length',
      measurand: clearance(smallEnd(cylinder), pinDiameter(cylinder), 'overall'),
      rule: {
        kind: 'computed',
        limits: limitsOf({
          low: -greatest,
          high: -least,
          target: -target,
          adviceLow: -read('usual-greatest'),
          adviceHigh: -read('usual-least'),
        }),
        formula: 'small end − pin, negative by the interference',
        worked: [`Interference: least ${say(least)}, greatest ${say(greatest)}, target ${say(target)}`],
      },
      remedy: {
        low: remedy('hone', smallEnd(cylinder), 'Size the small end on the pin hone.'),
        high: remedy(
          'replace',
          null,
          'The pin would walk into the bore: choose another rod or a larger pin.',
        ),
      },
    }))
  },
}
