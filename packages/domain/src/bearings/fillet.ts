import type { ShellSpecification } from '../engine/specification.ts'
import { NANOMETRES_PER_INCH, nanometresOf } from '../exact/length.ts'
import type { Nanometres } from '../exact/length.ts'
import { round } from '../exact/rounding.ts'

/** Shop margin between shell and fillet. From memory. */
const SHOP_MARGIN = NANOMETRES_PER_INCH / 100

/** Whether a shell's edge clears the fillet in the worst axial position; `margin` negative when it fouls. */
export interface FilletRoom {
  readonly state: 'clear' | 'look' | 'fouls' | 'unknown'
  readonly margin: Nanometres | null
}

/**
 * Shell against fillet with the rod's face hard against the cheek, where the side clearance is on the other
 * side and helps nothing. With fillet r, cheek-side inset e and edge bevel j: clear when e + j ≥ r and,
 * where e < r, the bevel's corner stays inside the fillet's circle: (r − e)² + (r − j)² ≤ r². Derived.
 * Whatever is unmeasured is unknown.
 * @param axialTravel how far the crank can still bring the cheek nearer: 0 for a rod, the whole end play
 *   for a main.
 * @formula fillet-room
 */
export function filletRoom(
  fillet: Nanometres | null,
  shell: Pick<ShellSpecification, 'cheekInset' | 'edgeBevel'>,
  axialTravel: Nanometres,
): FilletRoom {
  if (fillet === null || shell.cheekInset === null || shell.edgeBevel === null) {
    return { state: 'unknown', margin: null }
  }
  const inset = shell.cheekInset - axialTravel
  const bevel = shell.edgeBevel
  const alongAxis = inset + bevel - fillet
  const margin = nanometresOf(
    inset >= fillet ? alongAxis : Math.min(alongAxis, cornerRoom(fillet, inset, bevel)),
  )
  if (margin < 0) return { state: 'fouls', margin }
  return { state: margin < SHOP_MARGIN ? 'look' : 'clear', margin }
}

/**
 * r − √((r − e)² + (r − j)²), rounded toward the cautious side. A bevel deeper than the fillet leaves nothing
 * to meet it radially, so that r − j counts as 0.
 */
function cornerRoom(fillet: number, inset: number, bevel: number): number {
  return round(fillet - Math.hypot(fillet - inset, Math.max(0, fillet - bevel)), 'floor')
}

/**
 * The chamfer that the rod's own edge needs to clear the fillet, for shell wall t: radially r − t, axially
 * r − √(2rt − t²); nothing where the wall is at least the fillet. Derived. Rounded up.
 * @formula rod-chamfer
 */
export function rodChamferNeeded(
  fillet: Nanometres,
  wall: Nanometres,
): { radial: Nanometres; axial: Nanometres } {
  if (wall >= fillet) return { radial: nanometresOf(0), axial: nanometresOf(0) }
  return {
    radial: nanometresOf(fillet - wall),
    axial: nanometresOf(round(fillet - Math.sqrt(2 * fillet * wall - wall * wall), 'ceiling')),
  }
}
