import { mainBearing, mainJournal } from '../features/references.ts'
import { clearance, remedy } from './building-blocks.ts'
import type { FitDefinition } from './fit-definition.ts'
import { plainBearingParameters, plainBearingRule } from './plain-bearing.ts'

/** Oil clearance of a main bearing in its torqued housing, 90° to the split. */
export const mainBearingClearance: FitDefinition = {
  key: 'main-bearing',
  title: 'Main bearing oil clearance',
  critical: true,
  judgedAt: ['main-bearings'],
  parameters: plainBearingParameters,
  lines(context, read) {
    const rule = plainBearingRule(context.engine.mains.diameter, context, read)
    return Array.from({ length: context.engine.mains.count }, (_, index) => index + 1).map((journal) => ({
      position: journal,
      title: `Main bearing ${journal}`,
      quantity: 'length',
      measurand: clearance(mainBearing(journal), mainJournal(journal), 'by-station'),
      rule,
      remedy: {
        low: remedy(
          'thinner-shell',
          mainBearing(journal),
          'Fit a thinner half of the same family, or polish the journal.',
        ),
        high: remedy(
          'thicker-shell',
          mainBearing(journal),
          'Fit a thicker half of the same family; else grind to the next undersize.',
        ),
      },
    }))
  },
}
