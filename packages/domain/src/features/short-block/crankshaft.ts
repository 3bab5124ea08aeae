import type { EngineSpecification } from '../../engine/specification.ts'
import type { FeatureDefinition } from '../feature.ts'
import { toAndFro } from '../points.ts'
import { mainJournal, rodJournal } from '../references.ts'
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
