import type { EngineSpecification } from '../../engine/specification.ts'
import type { FeatureDefinition } from '../feature.ts'
import { point, toAndFro } from '../points.ts'
import { bore, boreRoughness, crosshatch, deckHeight, mainHousing } from '../references.ts'
import { journalEnds } from './journal-stations.ts'

/** A finished bore: three depths on the thrust and pin axes, true only with the torque plate on. */
export function boreFeature(engine: EngineSpecification, cylinder: number): FeatureDefinition {
  return {
    ...bore(cylinder),
    title: `Bore ${cylinder}`,
    shape: 'hole',
    quantity: 'length',
    nominal: engine.bore,
    points: toAndFro(['top', 'middle', 'bottom'], ['thrust', 'pin']),
    state: ['torque-plate-on'],
  }
}

/** The angle between the two ways of the stones’ marks, read where the bore is longest in the hone. */
export function crosshatchFeature(cylinder: number): FeatureDefinition {
  return {
    ...crosshatch(cylinder),
    title: `Crosshatch of bore ${cylinder}`,
    shape: 'other',
    quantity: 'angle',
    nominal: null,
    points: [point('middle', 'wall')],
    state: [],
  }
}

/** Roughness Ra along the bore. */
export function boreRoughnessFeature(cylinder: number): FeatureDefinition {
  return {
    ...boreRoughness(cylinder),
    title: `Roughness Ra of bore ${cylinder}`,
    shape: 'other',
    quantity: 'roughness',
    nominal: null,
    points: [point('middle', 'along')],
    state: [],
  }
}

/**
 * A main housing without shells, its cap torqued. Angles count from the vertical: the split itself is not
 * measured.
 */
export function mainHousingFeature(engine: EngineSpecification, journal: number): FeatureDefinition {
  return {
    ...mainHousing(journal),
    title: `Main housing ${journal}`,
    shape: 'hole',
    quantity: 'length',
    nominal: engine.mains.housing,
    points: toAndFro(journalEnds, ['vertical', '60-left', '60-right']),
    state: ['caps-torqued'],
  }
}

/** Main-bore centreline to deck, at the four corners of one bank's deck. */
export function deckHeightFeature(
  engine: EngineSpecification,
  bank: string,
  title: string,
): FeatureDefinition {
  return {
    ...deckHeight(bank),
    title,
    shape: 'other',
    quantity: 'length',
    nominal: engine.deckHeight,
    points: toAndFro(['front', 'rear'], ['outer', 'inner']),
    state: [],
  }
}
