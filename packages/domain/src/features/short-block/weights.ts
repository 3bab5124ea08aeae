import type { PartsSpecification } from '../../engine/specification.ts'
import type { FeatureDefinition, FeatureReference } from '../feature.ts'
import { point, toAndFro } from '../points.ts'
import {
  bigEndWeight, crankUnbalance, pinWeight, pistonWeight, retainersWeight, ringSetWeight, shellsWeight, smallEndWeight,
} from '../references.ts'

/** What is weighed of each cylinder, in the order in which a hand puts it on the scales. */
export function weightFeatures(cylinders: readonly number[]) {
  return {
    pistonWeights: cylinders.map((cylinder) => onScales(pistonWeight(cylinder), `Weight of piston ${cylinder}`)),
    pinWeights: cylinders.map((cylinder) => onScales(pinWeight(cylinder), `Weight of pin ${cylinder}`)),
    // One end lies on the scales and the other hangs level, so that each end is weighed alone.
    bigEndWeights: cylinders.map((cylinder) =>
      onScales(bigEndWeight(cylinder), `Weight of rod ${cylinder} big end with bolts`)),
    smallEndWeights: cylinders.map((cylinder) =>
      onScales(smallEndWeight(cylinder), `Weight of rod ${cylinder} small end`)),
  }
}

/** What is weighed once: one set of each. A pressed pin has no retainers. */
export function setWeightFeatures({ pin }: PartsSpecification): readonly FeatureDefinition[] {
  return [
    onScales(ringSetWeight, 'Weight of one piston’s rings'),
    ...(pin.fit === 'floating' ? [onScales(retainersWeight, 'Weight of one pin’s retainers')] : []),
    onScales(shellsWeight, 'Weight of one rod’s pair of shells'),
  ]
}

/** What is left when the crank spins, in the plane of each end's counterweights. */
export function crankUnbalanceFeature(): FeatureDefinition {
  return {
    ...crankUnbalance,
    title: 'Residual unbalance',
    shape: 'other',
    quantity: 'unbalance',
    nominal: null,
    points: toAndFro(['front-plane', 'rear-plane'], ['residual']),
    state: [],
  }
}

function onScales(reference: FeatureReference, title: string): FeatureDefinition {
  return {
    ...reference, title, shape: 'other', quantity: 'mass', nominal: null, points: [point('scales', 'weight')], state: [],
  }
}
