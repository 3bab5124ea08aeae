import type { FeatureDefinition } from '../feature.ts'
import { point, toAndFro } from '../points.ts'
import { journalEnds } from '../short-block/journal-stations.ts'
import { camBearing, camCentreline, camEndPlay, camJournal, lifterBody, lifterBore } from './references.ts'

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

/** The camshaft pushed fully each way against its plate. */
export function camEndPlayFeature(): FeatureDefinition {
  return { ...camEndPlay, ...length, title: 'Camshaft end play', shape: 'gap', points: [point('thrust-plate', 'axial')] }
}

/** Where the first intake valve is fully open, in crank angle after top centre, by degree wheel. */
export function camCentrelineFeature(): FeatureDefinition {
  return {
    ...camCentreline, title: 'Intake centreline', shape: 'other', quantity: 'angle', nominal: null, state: [],
    points: [point('degree-wheel', 'after-top-centre')],
  }
}
