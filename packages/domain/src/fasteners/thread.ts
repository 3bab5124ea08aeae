import { DomainError } from '../errors.ts'
import { positive } from '../in-range.ts'

/** Thread families, which round the same profile differently in their standards. */
export const threadFamilies = ['metric', 'unified'] as const
export type ThreadFamily = (typeof threadFamilies)[number]

/** A thread; lengths in nanometres. A unified thread's pitch is an inch over its threads for each inch. */
export interface Thread {
  readonly family: ThreadFamily
  readonly diameter: number
  readonly pitch: number
}

/** How many pitches the stress diameter lies under the nominal one. */
const stressFactor: Record<ThreadFamily, number> = { metric: 0.938_194, unified: 0.974_3 }

/**
 * Tensile stress area in square millimetres: π/4 · (d − 0.938194 P)² metric; 0.7854 · (D − 0.9743/n)²
 * unified. Source: ISO 898-1 and ASME B1.1 as quoted in textbooks (Bickford; Shigley).
 * @throws DomainError `value-out-of-range` for a pitch that leaves no core
 * @formula stress-area
 */
export function stressArea({ family, diameter, pitch }: Thread): number {
  const core = positive(diameter, 'diameter') - stressFactor[family] * positive(pitch, 'pitch')
  if (core <= diameter / 2) {
    throw new DomainError('value-out-of-range', 'This pitch is too coarse for the diameter.', 'pitch')
  }
  return ((Math.PI / 4) * core ** 2) / 1e12
}
