import type { EngineSpecification } from '../../engine/specification.ts'
import type { FeatureDefinition } from '../feature.ts'
import { point, toAndFro } from '../points.ts'
import { mainJournal, mainRunOut, rodJournal } from '../references.ts'
import { journalEnds, rodJournalStations } from './journal-stations.ts'

/** A main journal at two ends and two angles, off fillet and oil hole. */
export function mainJournalFeature(engine: EngineSpecification, journal: number): FeatureDefinition {
  return {
    ...mainJournal(journal),
    title: `Main journal ${journal}`,
    shape: 'shaft',
    quantity: 'length',
    nominal: engine.mains.diameter,
    points: toAndFro(journalEnds, ['vertical', 'horizontal']),
    state: [],
  }
}

/** A rod journal at two angles, at both ends under every rod that runs on it. */
export function rodJournalFeature(engine: EngineSpecification, journal: number): FeatureDefinition {
  return {
    ...rodJournal(journal),
    title: `Rod journal ${journal}`,
    shape: 'shaft',
    quantity: 'length',
    nominal: engine.rodJournals.diameter,
    points: toAndFro(rodJournalStations(engine), ['vertical', 'horizontal']),
    state: [],
  }
}

/** One turn under an indicator on a main between the two end mains, in which the crank lies. */
export function mainRunOutFeature(journal: number): FeatureDefinition {
  return {
    ...mainRunOut(journal),
    title: `Run-out of main journal ${journal}`,
    shape: 'other',
    quantity: 'length',
    nominal: null,
    points: [point('middle', 'one-turn')],
    state: [],
  }
}
