import type { FeatureDefinition, FeatureReference, Quantity } from '../feature.ts'
import { toAndFro } from '../points.ts'
import { headBoltAngle, headBoltStretch, headBoltTorque } from './references.ts'

/** Every bolt of a head in the maker's order, by each way of tightening. */
export function headBoltFeatures(head: number, count: number) {
  const bolts = Array.from({ length: count }, (_, index) => `bolt-${index + 1}`)
  const feature = (reference: FeatureReference, words: string, quantity: Quantity): FeatureDefinition => ({
    ...reference, title: `Head ${head} bolt ${words}`, quantity, shape: 'other', nominal: null, state: [],
    points: toAndFro(bolts, ['bolt']),
  })
  return {
    torque: feature(headBoltTorque(head), 'torque', 'torque'),
    angle: feature(headBoltAngle(head), 'angle', 'angle'),
    stretch: feature(headBoltStretch(head), 'stretch', 'length'),
  }
}
