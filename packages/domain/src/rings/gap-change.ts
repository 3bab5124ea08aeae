import { inRange, positive } from '../in-range.ts'

/**
 * How much wider a ring's end gap stands in a bore that is larger: π × the growth of the diameter. Same
 * unit.
 * @formula gap-growth
 */
export function gapGrowth(boreGrowth: number): number {
  return Math.PI * inRange(boreGrowth, -1e9, 1e9, 'boreGrowth')
}

/** A ring or bore that gets warmer. */
export interface Warming {
  /** Linear expansion for each degree. */
  readonly expansion: number
  /** Rise in the same degrees. */
  readonly rise: number
}

/**
 * How much a ring's end gap closes with heat: (π·D − g)·α·ΔT of the ring, less π·D·α·ΔT of the bore where
 * that warms too. Derived; result in the unit of diameter and gap.
 * @throws DomainError `value-out-of-range` for a gap wider than the circumference or a negative rise
 * @formula gap-closing
 */
export function gapClosing(
  diameter: number,
  gap: number,
  ring: Warming,
  bore: Warming = { expansion: 0, rise: 0 },
): number {
  const circumference = Math.PI * positive(diameter, 'diameter')
  inRange(gap, 0, circumference, 'gap')
  return (circumference - gap) * strain(ring, 'ring') - circumference * strain(bore, 'bore')
}

function strain({ expansion, rise }: Warming, field: string): number {
  return inRange(expansion, 0, 1e-3, `${field}.expansion`) * inRange(rise, 0, 2_000, `${field}.rise`)
}
