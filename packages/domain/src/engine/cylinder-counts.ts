import type { EngineSpecification, PinSharing } from './specification.ts'

/** How many cylinders share one row of throws: two on a shared or split pin, else one. */
function cylindersPerThrow(sharing: PinSharing): number {
  return sharing === 'one-rod' ? 1 : 2
}

/** Throws of the crank: places between two cheeks; a split pin is one throw with two journals. */
export function throwCount(engine: EngineSpecification): number {
  return engine.cylinders / cylindersPerThrow(engine.pinSharing)
}

/** Ground rod journals: two rods share one unless each has its own, as on a split pin. */
export function rodJournalCount(engine: EngineSpecification): number {
  const shared = engine.pinSharing === 'two-plain-rods' || engine.pinSharing === 'fork-and-blade'
  return shared ? engine.cylinders / 2 : engine.cylinders
}

/** Whether the cylinders stand in two banks. */
export function hasTwoBanks(engine: EngineSpecification): boolean {
  return engine.arrangement === 'v' || engine.arrangement === 'flat'
}
