import type { EngineSpecification, PartsSpecification } from '../../engine/specification.ts'
import type { FeatureDefinition } from '../feature.ts'
import { point, toAndFro } from '../points.ts'
import { bigEnd, pinBore, pinDiameter, skirt, smallEnd } from '../references.ts'
import { journalEnds } from './journal-stations.ts'

/** A big end without shells, its own cap torqued. */
export function bigEndFeature(engine: EngineSpecification, cylinder: number): FeatureDefinition {
  return {
    ...bigEnd(cylinder), title: `Rod ${cylinder} big end`, shape: 'hole', quantity: 'length',
    nominal: engine.rodJournals.housing, points: toAndFro(journalEnds, ['vertical', '60-left', '60-right']),
    state: ['caps-torqued'],
  }
}

/** The bushing of a floating pin, or the plain bore that a pressed pin sits in. */
export function smallEndFeature(parts: PartsSpecification, cylinder: number): FeatureDefinition {
  return {
    ...smallEnd(cylinder), title: `Rod ${cylinder} small end`, shape: 'hole', quantity: 'length',
    nominal: parts.rod.smallEndBore, points: toAndFro(journalEnds, ['along-rod', 'across-rod']), state: [],
  }
}

/** A piston at its maker's gauge point, across the pin. */
export function skirtFeature(parts: PartsSpecification, cylinder: number): FeatureDefinition {
  return {
    ...skirt(cylinder), title: `Piston ${cylinder} at its gauge point`, shape: 'shaft', quantity: 'length',
    nominal: parts.piston.diameter, points: [point('gauge-point', 'thrust')], state: [],
  }
}

/** Both bosses of a piston's pin bore. */
export function pinBoreFeature(parts: PartsSpecification, cylinder: number): FeatureDefinition {
  return {
    ...pinBore(cylinder), title: `Piston ${cylinder} pin bore`, shape: 'hole', quantity: 'length',
    nominal: parts.piston.pinBore, points: toAndFro(['front-boss', 'rear-boss'], ['across']), state: [],
  }
}

/** A piston pin in the middle, where the rod runs, and at both ends, where the bosses do. */
export function pinFeature(parts: PartsSpecification, cylinder: number): FeatureDefinition {
  return {
    ...pinDiameter(cylinder), title: `Pin ${cylinder}`, shape: 'shaft', quantity: 'length',
    nominal: parts.pin.diameter, points: toAndFro(['front-end', 'middle', 'rear-end'], ['across']), state: [],
  }
}
