import type { FeatureDefinition } from '../feature.ts'
import { point, toAndFro } from '../points.ts'
import { bore, endGap, railGap, ringBackClearance, ringSideClearance } from '../references.ts'
import type { CompressionRing } from '../references.ts'

export const ringTitles: Record<CompressionRing | 'oil-ring', string> = {
  'top-ring': 'Top ring',
  'second-ring': 'Second ring',
  'oil-ring': 'Oil ring',
}

const gap = { shape: 'gap', quantity: 'length', nominal: null, state: [] } as const

/** The gap of a ring squared in its own finished bore. */
export function endGapFeature(ring: CompressionRing, cylinder: number): FeatureDefinition {
  return {
    ...endGap(ring, cylinder),
    ...gap,
    title: `${ringTitles[ring]} ${cylinder} end gap`,
    points: [point('square-in-bore', 'gap')],
    beside: [bore(cylinder)],
  }
}

/** Both rails of an oil ring, squared in their bore. */
export function railGapFeature(cylinder: number): FeatureDefinition {
  return {
    ...railGap(cylinder),
    ...gap,
    title: `Oil rails ${cylinder} end gap`,
    points: toAndFro(['upper-rail', 'lower-rail'], ['gap']),
    beside: [bore(cylinder)],
  }
}

/** Between ring and groove flank, on both sides of the piston. */
export function sideClearanceFeature(
  ring: CompressionRing | 'oil-ring',
  cylinder: number,
): FeatureDefinition {
  return {
    ...ringSideClearance(ring, cylinder),
    ...gap,
    title: `${ringTitles[ring]} ${cylinder} side clearance`,
    points: toAndFro(['thrust-side', 'other-side'], ['flank']),
    beside: [{ place: `piston/${cylinder}`, feature: null }],
  }
}

/** How far the ring's face lies below the land when it is pressed home. */
export function backClearanceFeature(ring: CompressionRing, cylinder: number): FeatureDefinition {
  return {
    ...ringBackClearance(ring, cylinder),
    ...gap,
    title: `${ringTitles[ring]} ${cylinder} face below the land`,
    points: [point('pressed-home', 'land')],
    beside: [{ place: `piston/${cylinder}`, feature: null }],
  }
}
