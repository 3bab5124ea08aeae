import type { EngineSpecification } from '../../engine/specification.ts'
import type { CylinderOrientation } from '../../layout/orientation-types.ts'
import type { FeatureDefinition, FeatureReference, Neighbour } from '../feature.ts'
import { point, toAndFro } from '../points.ts'
import {
  bigEnd,
  deckClearanceAt,
  deckHeight,
  mainBearing,
  mainBoltAngle,
  mainBoltTorque,
  mainHousing,
  pickUpToPan,
  pinEndPlayAt,
  rodBearing,
  rodBoltAngle,
  rodBoltSet,
  rodBoltStretch,
  rodBoltTorque,
  rodSideClearance,
} from '../references.ts'
import { journalEnds, rodBearingStations } from './journal-stations.ts'

const inPlace = { shape: 'hole', quantity: 'length', state: ['shells-in', 'caps-torqued'] } as const
const theCrankshaft: Neighbour = { place: 'crankshaft', feature: null }
const gap = { shape: 'gap', quantity: 'length', nominal: null, state: [] } as const

/**
 * A main bearing in its torqued housing, 90° to the split: its wall thins toward the split, so nowhere
 * else.
 */
export function mainBearingFeature(engine: EngineSpecification, journal: number): FeatureDefinition {
  return {
    ...mainBearing(journal),
    ...inPlace,
    title: `Main bearing ${journal}`,
    nominal: engine.mains.diameter,
    points: toAndFro(journalEnds, ['vertical']),
    beside: [mainHousing(journal)],
  }
}

/** A rod bearing in its torqued rod, 90° to the split, at the stations of its part of the crankpin. */
export function rodBearingFeature(
  engine: EngineSpecification,
  cylinder: CylinderOrientation,
): FeatureDefinition {
  return {
    ...rodBearing(cylinder.cylinder),
    ...inPlace,
    title: `Rod bearing ${cylinder.cylinder}`,
    nominal: engine.rodJournals.diameter,
    points: toAndFro(rodBearingStations(engine, cylinder.placeOnPin), ['vertical']),
    beside: [bigEnd(cylinder.cylinder)],
  }
}

/**
 * The crank pushed fully each way: at trial assembly, and again, as a feature of its own, when it stays in.
 */
export function crankEndPlayFeature(reference: FeatureReference, title: string): FeatureDefinition {
  return { ...reference, ...gap, title, points: [point('thrust-main', 'axial')], beside: [theCrankshaft] }
}

/** Between rod and cheek with all rods of the pin to one side. */
export function rodSideClearanceFeature(
  journal: number,
  cylinders: readonly CylinderOrientation[],
): FeatureDefinition {
  const onThisPin = cylinders.filter(({ crankpin }) => crankpin === journal)
  return {
    ...rodSideClearance(journal),
    ...gap,
    title: `Rod side clearance on rod journal ${journal}`,
    points: [point('crankpin', 'axial')],
    beside: [theCrankshaft, ...onThisPin.map(({ cylinder }) => ({ place: `rod/${cylinder}`, feature: null }))],
  }
}

/** Piston below deck at two points over the pin axis: their mean cancels the rock. */
export function deckClearanceFeature({ cylinder, bank }: CylinderOrientation): FeatureDefinition {
  return {
    ...deckClearanceAt(cylinder),
    ...gap,
    title: `Piston ${cylinder} below deck`,
    shape: 'other',
    points: toAndFro(['front', 'rear'], ['over-pin']),
    beside: [
      theCrankshaft,
      { place: `rod/${cylinder}`, feature: null },
      { place: `piston/${cylinder}`, feature: null },
      deckHeight(bank ?? 'only'),
    ],
  }
}

/** The pin moved fully each way between its retainers. */
export function pinEndPlayFeature(cylinder: number): FeatureDefinition {
  return {
    ...pinEndPlayAt(cylinder),
    ...gap,
    title: `Pin ${cylinder} end play`,
    points: [point('between-rings', 'axial')],
    beside: [{ place: `piston/${cylinder}`, feature: null }, { place: `piston-pin/${cylinder}`, feature: null }],
  }
}

const bolts = {
  shape: 'other',
  nominal: null,
  state: [],
  points: toAndFro(['first-bolt', 'second-bolt'], ['bolt']),
} as const

/** Both bolts of a rod: how much longer they became when tightened. */
export function rodBoltStretchFeature(cylinder: number): FeatureDefinition {
  return {
    ...rodBoltStretch(cylinder),
    ...bolts,
    title: `Rod ${cylinder} bolt stretch`,
    quantity: 'length',
  }
}

/** Both bolts of a rod by torque. */
export function rodBoltTorqueFeature(cylinder: number): FeatureDefinition {
  return { ...rodBoltTorque(cylinder), ...bolts, title: `Rod ${cylinder} bolt torque`, quantity: 'torque' }
}

/** Both bolts of a rod by the angle past their snug torque. */
export function rodBoltAngleFeature(cylinder: number): FeatureDefinition {
  return { ...rodBoltAngle(cylinder), ...bolts, title: `Rod ${cylinder} bolt angle`, quantity: 'angle' }
}

/** Both bolts of a rod, released: how much longer they stayed than they were before they were first tightened. */
export function rodBoltSetFeature(cylinder: number): FeatureDefinition {
  return { ...rodBoltSet(cylinder), ...bolts, title: `Rod ${cylinder} bolt set`, quantity: 'length' }
}

/** Both bolts of a main cap by the angle past their snug torque. */
export function mainBoltAngleFeature(journal: number): FeatureDefinition {
  return { ...mainBoltAngle(journal), ...bolts, title: `Main cap ${journal} bolt angle`, quantity: 'angle' }
}

/** From the oil pump's pick-up to the floor of the pan, by clay or by depth. */
export function pickUpToPanFeature(): FeatureDefinition {
  return { ...pickUpToPan, ...gap, title: 'Pick-up to pan', points: [point('pick-up', 'vertical')] }
}

/** Both bolts of a main cap by torque. */
export function mainBoltTorqueFeature(journal: number): FeatureDefinition {
  return {
    ...mainBoltTorque(journal),
    ...bolts,
    title: `Main cap ${journal} bolt torque`,
    quantity: 'torque',
  }
}

/** Steady turning effort at the crank's nose. */
export function turningTorqueFeature(reference: FeatureReference, title: string): FeatureDefinition {
  return {
    ...reference,
    title,
    shape: 'other',
    quantity: 'torque',
    nominal: null,
    state: [],
    points: [point('nose', 'steady')],
    beside: [theCrankshaft],
  }
}
