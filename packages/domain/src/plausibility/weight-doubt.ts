import type { FeatureReference } from '../features/feature.ts'
import { median } from '../statistics/sample.ts'
import { ask, block, isIn, type Doubt } from './doubt.ts'
import { checkMagnitude } from './magnitude.ts'
import type { PlausibilityNumbers } from './numbers.ts'
import { doubtOfQuantity } from './other-doubts.ts'
import { familyOf } from './reading-kind-of.ts'

/** The share by which a figure differs from what it is held against, whichever is the larger. */
const factorOf = (value: number, expected: number) => Math.max(value / expected, expected / value)

/**
 * A weight that nothing can have, that is ounces for grams or a decimal place beside its like, or, of a piston, out of what
 * engines have.
 * @param value and neighbours in milligrams
 */
export function doubtsOfWeight(
  feature: FeatureReference, value: number, neighbours: readonly number[], numbers: PlausibilityNumbers,
): Doubt[] {
  if (value <= 0) return [block('range', 'Nothing weighs nothing or less: were the scales set to zero?')]
  if (neighbours.length > 0) {
    const middle = median(neighbours)
    if (isIn(factorOf(value, middle), numbers.ounceRatio)) {
      return [block('unit', 'This is about 28 times off from the others: ounces and grams mixed up?')]
    }
    const slip = checkMagnitude(value, middle, { ...numbers.magnitude, unitRatio: [Infinity, Infinity] })
    if (slip !== null) return [{ ...slip, sentence: slip.sentence.replace('the nominal size', 'the others') }]
  }
  const unusual = familyOf(feature) === 'piston#weight' ? doubtOfQuantity('pistonMass', value, numbers) : null
  return unusual === null ? [] : [unusual]
}

/** Newtons for pounds-force or the reverse; nothing where nobody says what to expect. */
export function doubtOfForceUnit(value: number, expected: number | null, { poundForceRatio }: PlausibilityNumbers): Doubt | null {
  if (expected === null || value <= 0 || expected <= 0) return null
  return isIn(factorOf(value, expected), poundForceRatio)
    ? ask('unit', 'This is the usual load in another unit: newtons or pounds-force?')
    : null
}
