import { rodBearing, rodJournal } from '../features/references.ts'
import { clearance, remedy } from './building-blocks.ts'
import type { FitDefinition } from './fit-definition.ts'
import { plainBearingParameters, plainBearingRule } from './plain-bearing.ts'

/** Oil clearance of a rod bearing in its torqued rod, 90° to the split. */
export const rodBearingClearance: FitDefinition = {
  key: 'rod-bearing',
  title: 'Rod bearing oil clearance',
  critical: true,
  judgedAt: ['rod-bearings'],
  parameters: plainBearingParameters,
  lines(context, read) {
    const rule = plainBearingRule(context.engine.rodJournals.diameter, context, read)
    return context.cylinders.map(({ cylinder, crankpin }) => ({
      position: cylinder,
      title: `Rod bearing ${cylinder} on rod journal ${crankpin}`,
      quantity: 'length',
      measurand: clearance(rodBearing(cylinder), rodJournal(crankpin), 'by-station'),
      rule,
      remedy: {
        low: remedy(
          'thinner-shell',
          rodBearing(cylinder),
          'Fit a thinner half of the same family, or polish the journal.',
        ),
        high: remedy(
          'thicker-shell',
          rodBearing(cylinder),
          'Fit a thicker half of the same family; else grind to the next undersize.',
        ),
      },
    }))
  },
}
