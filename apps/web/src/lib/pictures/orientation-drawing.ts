import type { CylinderOrientation } from '@tenths/domain'

/** What the picture needs to know of a cylinder. */
export type Facing = Omit<CylinderOrientation, 'valleyHour' | 'notchToChamfer'>

/** One cylinder as it is drawn: its middle, in units of one bore's pitch. */
export interface DrawnCylinder {
  readonly orientation: Facing
  readonly x: number
  readonly y: number
}

export interface OrientationDrawing {
  readonly width: number
  readonly height: number
  readonly cylinders: readonly DrawnCylinder[]
}

/** How far the rear rod of a shared pin stands behind the front one, as a part of the pitch. */
const stagger = 0.3

/**
 * Cylinders seen from above with the front of the engine at the top. Who stands in front and faces the engine then has
 * the left hand at the right of the picture, so the bank on the viewer's left is drawn there.
 */
export function drawOrientation(orientation: readonly Facing[]): OrientationDrawing {
  const banks = new Set(orientation.map(({ bank }) => bank))
  const rows = new Map<Facing['bank'], number>()
  const cylinders = orientation.map((one) => {
    const row = rows.get(one.bank) ?? 0
    rows.set(one.bank, row + 1)
    return { orientation: one, x: one.bank === 'viewer-left' ? 1 : 0, y: row + stagger * (one.placeOnPin - 1) }
  })
  return {
    width: banks.size,
    height: Math.max(0, ...cylinders.map(({ y }) => y)) + 1,
    cylinders,
  }
}

/** The same in words, cylinder by cylinder. */
export function describeOrientation({ cylinder, wideChamferFaces, majorThrust }: Facing, hasFrontMark = true): string {
  const chamfer = wideChamferFaces === null
    ? 'no rod side to watch'
    : `wide chamfer of the rod to the ${wideChamferFaces}`
  const thrust = majorThrust === 'left' || majorThrust === 'right'
    ? `to the ${majorThrust} of who stands in front`
    : majorThrust
  return `Cylinder ${cylinder}: ${chamfer}; ${hasFrontMark ? 'front mark to the front; ' : ''}thrust ${thrust}.`
}
