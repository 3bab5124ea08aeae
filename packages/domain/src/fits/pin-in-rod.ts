import { isBoosted } from '../engine/duty.ts'
import { pinDiameter, smallEnd } from '../features/references.ts'
import {
  between,
  clearance,
  COMMON_PRACTICE,
  FROM_MEMORY,
  guardParameter,
  parameter,
  remedy,
  say,
  TENTH,
} from './building-blocks.ts'
import type { FitDefinition } from './fit-definition.ts'

/** A floating pin in the bushing of its rod: a boosted engine's pin runs hotter and needs more room. */
export const pinInRod: FitDefinition = {
  key: 'pin-in-rod',
  title: 'Floating pin in rod bushing',
  critical: true,
  judgedAt: ['hone-small-ends'],
  parameters: [
    parameter('low', 'Least clearance', 'length', 3 * TENTH, FROM_MEMORY),
    parameter('high', 'Greatest clearance', 'length', 8 * TENTH, FROM_MEMORY),
    parameter('target', 'Target', 'length', 5 * TENTH, FROM_MEMORY),
    parameter('boosted-low', 'Least clearance, boosted', 'length', 6 * TENTH, FROM_MEMORY),
    parameter('boosted-high', 'Greatest clearance, boosted', 'length', 10 * TENTH, FROM_MEMORY),
    parameter('boosted-target', 'Target, boosted', 'length', 7 * TENTH, COMMON_PRACTICE),
    // A pin-fit gauge set on the pin itself reads this fit to half a tenth: guarding it can be met.
    guardParameter('guarded'),
  ],
  lines({ parts, duty, cylinders }, read) {
    if (parts.pin.fit !== 'floating') return []
    const [prefix, use] = isBoosted(duty) ? ['boosted-', 'Boosted'] : ['', 'Not boosted']
    const [low, high, target] = [read(`${prefix}low`), read(`${prefix}high`), read(`${prefix}target`)]
    return cylinders.map(({ cylinder }) => ({
      position: cylinder,
      title: `Pin in rod ${cylinder}`,
      quantity: 'length',
      measurand: clearance(smallEnd(cylinder), pinDiameter(cylinder), 'overall'),
      rule: {
        kind: 'computed',
        limits: between(low, high, target),
        formula: 'bushing − pin, between the limits for this duty',
        worked: [
          `${use}: low ${say(low)}, high ${say(high)}, target ${say(target)}`,
        ],
      },
      remedy: {
        low: remedy(
          'hone',
          smallEnd(cylinder),
          'Hone the bushing on the pin hone; let it cool before the next reading.',
        ),
        high: remedy('replace', smallEnd(cylinder), 'Fit a new bushing: metal cannot be put back.'),
      },
    }))
  },
}
