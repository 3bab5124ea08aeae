import type { FeatureDefinition } from '../feature.ts'
import { toAndFro } from '../points.ts'
import { journalEnds } from '../short-block/journal-stations.ts'
import { camBearing, camJournal, lifterBody, lifterBore } from './references.ts'

const length = { quantity: 'length', nominal: null, state: [] } as const
const acrossBoth = ['vertical', 'horizontal']

/** A cam bearing in the block: driving it in has closed it, so nothing measured before counts. */
export function camBearingFeature(journal: number): FeatureDefinition {
  return {
    ...camBearing(journal), ...length, title: `Cam bearing ${journal}`, shape: 'hole',
    points: toAndFro(journalEnds, acrossBoth),
  }
}

export function camJournalFeature(journal: number): FeatureDefinition {
  return {
    ...camJournal(journal), ...length, title: `Cam journal ${journal}`, shape: 'shaft',
    points: toAndFro(journalEnds, acrossBoth),
  }
}

export function lifterBoreFeature(number: number): FeatureDefinition {
  return {
    ...lifterBore(number), ...length, title: `Lifter bore ${number}`, shape: 'hole',
    points: toAndFro(['top', 'bottom'], acrossBoth),
  }
}

export function lifterBodyFeature(number: number): FeatureDefinition {
  return {
    ...lifterBody(number), ...length, title: `Lifter ${number}`, shape: 'shaft',
    points: toAndFro(['top', 'bottom'], ['across']),
  }
}
