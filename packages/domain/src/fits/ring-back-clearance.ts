import { ringTitles } from '../features/short-block/rings.ts'
import { compressionRings, ringBackClearance as backClearance } from '../features/references.ts'
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
import type { FitDefinition } from './fit-definition.ts'

/** How far a compression ring pressed home lies below the land: a ring that stands proud scores its bore. */
export const ringBackClearances: readonly FitDefinition[] = compressionRings.map((ring) => ({
  key: `${ring}-back-clearance`,
  title: `${ringTitles[ring]} below the land`,
  critical: false,
  judgedAt: ['ring-gaps'],
  parameters: [
    parameter('low', 'Least', 'length', 3 * THOUSANDTH, FROM_MEMORY),
    parameter('high', 'Greatest', 'length', 10 * THOUSANDTH, FROM_MEMORY),
    guardParameter('accepted'),
  ],
  lines: ({ cylinders }, read) =>
    cylinders.map(({ cylinder }) => ({
      position: cylinder,
      title: `${ringTitles[ring]} ${cylinder} below the land`,
      quantity: 'length',
      measurand: reading(backClearance(ring, cylinder), 'each'),
      rule: {
        kind: 'computed',
        limits: between(read('low'), read('high')),
        formula: 'land less ring face with the ring pressed home; never proud',
        worked: [`Low ${say(read('low'))}, high ${say(read('high'))}`],
      },
      remedy: {
        low: remedy('replace', null, 'A ring of less depth, or the groove deepened by the piston’s maker.'),
        high: remedy('replace', null, 'A ring of more depth, or a spacer behind it by its maker’s sheet.'),
      },
    })),
}))
