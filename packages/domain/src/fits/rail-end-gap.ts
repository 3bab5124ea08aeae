import { railGap } from '../features/references.ts'
import { guardParameter, limitsOf, parameter, reading, remedy, say, THOUSANDTH } from './building-blocks.ts'
import type { FitDefinition } from './fit-definition.ts'

/** The end gap of oil rails: only a least. */
export const railEndGap: FitDefinition = {
  key: 'oil-rail-end-gap',
  title: 'Oil rail end gap',
  critical: false,
  judgedAt: ['ring-gaps'],
  parameters: [
    parameter(
      'low',
      'Least',
      'length',
      15 * THOUSANDTH,
      'a piston maker’s ring sheet, read: 0.015 in at least',
    ),
    guardParameter('accepted'),
  ],
  lines: ({ cylinders }, read) =>
    cylinders.map(({ cylinder }) => ({
      position: cylinder,
      title: `Oil rails ${cylinder} end gap`,
      quantity: 'length',
      measurand: reading(railGap(cylinder), 'least'),
      rule: {
        kind: 'computed',
        limits: limitsOf({ low: read('low'), target: read('low') }),
        formula: 'the smaller of the two rails’ gaps, at least the limit',
        worked: [`Least: ${say(read('low'))}`],
      },
      remedy: {
        low: remedy('file', railGap(cylinder), 'File one end of the rail, or try the next size of set.'),
        high: null,
      },
    })),
}
