import { pinEndPlayAt } from '../features/references.ts'
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
import type { FitDefinition } from './fit-definition.ts'

/** End play of a floating pin between flat retaining rings: over it the pin hammers a ring out. */
export const pinEndPlayFit: FitDefinition = {
  key: 'pin-end-play',
  title: 'Pin end play',
  critical: true,
  judgedAt: ['trial-assembly'],
  parameters: [
    parameter('low', 'Least', 'length', 0, FROM_MEMORY),
    parameter('high', 'Greatest', 'length', 5 * THOUSANDTH, FROM_MEMORY),
    guardParameter('accepted'),
  ],
  lines({ parts, cylinders }, read) {
    if (parts.pin.fit !== 'floating') return []
    const [low, high] = [read('low'), read('high')]
    return cylinders.map(({ cylinder }) => ({
      position: cylinder,
      title: `Pin ${cylinder} end play`,
      quantity: 'length',
      measurand: reading(pinEndPlayAt(cylinder), 'each'),
      rule:
        parts.retainers === null
          ? {
              kind: 'sheet-needed',
              reason:
                'Wire retainers wedge on the pin’s bevel: their end play stands on the maker’s sheet.',
            }
          : {
              kind: 'computed',
              limits: limitsOf({ low, high }),
              formula: 'outer flank to outer flank of the grooves − rings × thickness − pin length',
              worked: [`Flat rings, ${parts.retainers.perSide} a side: low ${say(low)}, high ${say(high)}`],
            },
      remedy: {
        low: remedy('replace', null, 'Thinner rings, or a shorter pin: never force the last ring in.'),
        high: remedy('replace', null, 'Thicker rings, or a longer pin.'),
      },
    }))
  },
}
