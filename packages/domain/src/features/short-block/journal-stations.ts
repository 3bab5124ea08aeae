import type { EngineSpecification } from '../../engine/specification.ts'

/** Two places along a journal or bearing: one place hides taper. */
export const journalEnds = ['front', 'rear'] as const

/** A shared crankpin is measured under both rods. */
export function rodJournalStations(engine: EngineSpecification): readonly string[] {
  return engine.pinSharing === 'two-plain-rods' ? ['front', 'front-inner', 'rear-inner', 'rear'] : journalEnds
}

/**
 * The part of its crankpin that one rod's bearing runs on: named as on the journal, so that the two can be
 * paired.
 */
export function rodBearingStations(engine: EngineSpecification, placeOnPin: number): readonly string[] {
  if (engine.pinSharing !== 'two-plain-rods') return journalEnds
  return placeOnPin === 1 ? ['front', 'front-inner'] : ['rear-inner', 'rear']
}
