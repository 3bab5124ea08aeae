import { ringTitles } from '../features/short-block/rings.ts'
import { compressionRings, ringSideClearance as sideClearance } from '../features/references.ts'
import type { FitLine } from './fit-definition.ts'
import {
  between,
  FROM_MEMORY,
  guardParameter,
  parameter,
  reading,
  remedy,
  say,
  TENTH,
} from './building-blocks.ts'
import type { FitDefinition } from './fit-definition.ts'

const parameters = [
  parameter('low', 'Least', 'length', 10 * TENTH, FROM_MEMORY),
  parameter('high', 'Greatest, new pistons', 'length', 25 * TENTH, FROM_MEMORY),
  guardParameter('accepted'),
]

/** Room of each compression ring between the flanks of its groove. */
export const ringSideClearances: readonly FitDefinition[] = compressionRings.map((ring) => ({
  key: `${ring}-side-clearance`,
  title: `${ringTitles[ring]} side clearance`,
  critical: false,
  judgedAt: ['ring-gaps'],
  parameters,
  lines: ({ cylinders }, read) =>
    cylinders.map(({ cylinder }) => line(ring, cylinder, read('low'), read('high'))),
}))

/** Room of an oil ring that stands on a support rail: checked with the rail in. */
export const oilRingSideClearance: FitDefinition = {
  key: 'oil-ring-side-clearance',
  title: 'Oil ring side clearance on its support rail',
  critical: false,
  judgedAt: ['support-rails'],
  parameters,
  lines: ({ cylinders, supportRail }, read) =>
    supportRail
      ? cylinders.map(({ cylinder }) => line('oil-ring', cylinder, read('low'), read('high')))
      : [],
}

function line(ring: keyof typeof ringTitles, cylinder: number, low: number, high: number): FitLine {
  return {
    position: cylinder,
    title: `${ringTitles[ring]} ${cylinder} side clearance`,
    quantity: 'length',
    measurand: reading(sideClearance(ring, cylinder), 'each'),
    rule: {
      kind: 'computed',
      limits: between(low, high),
      formula: 'groove width − ring width, between the limits for new pistons',
      worked: [`Low ${say(low)}, high ${say(high)}`],
    },
    remedy: {
      low: remedy('replace', null, 'Look for a burr or carbon first; else a thinner ring.'),
      high: remedy(
        'replace',
        null,
        'The groove is worn or wrong: another piston, or a spacer by its maker’s sheet.',
      ),
    },
  }
}
