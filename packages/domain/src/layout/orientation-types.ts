/** Which end of the engine a face or mark points to. */
export type EngineEnd = 'front' | 'back'

/**
 * Which way round everything of one cylinder stands. Left and right are a viewer's in front of the engine,
 * facing it; on the crown, the clock is read with the front of the engine at 12.
 */
export interface CylinderOrientation {
  readonly cylinder: number
  readonly bank: 'viewer-left' | 'viewer-right' | null
  /** Crankpin number from the front, and the rod's place on it (1 in front). */
  readonly crankpin: number
  readonly placeOnPin: number
  /** Where the wide chamfer of the big end faces; null where no plain rods share the pin. */
  readonly wideChamferFaces: EngineEnd | null
  /** Where a piston's front mark points. */
  readonly frontMark: 'front'
  /** Side that takes the major thrust, for the viewer in front: left, right, up (flat) or down (flat). */
  readonly majorThrust: 'left' | 'right' | 'up' | 'down'
  /** The same on the crown, as a clock hour with the front at 12. */
  readonly majorThrustHour: 3 | 9
  /**
   * On which hand of the assembly the chamfer lies when the front mark is up: equal on every assembly of a
   * bank.
   */
  readonly hand: 'with-mark' | 'against-mark' | null
  /** Where the valley of a V lies on the crown, as a clock hour with the front at 12. */
  readonly valleyHour: 3 | 9 | null
  /**
   * Seen on the crown, the quarter turn from valve notches that lie toward the valley to the wide chamfer:
   * the same on every assembly of a symmetric V, so that an odd one out is an error of assembly.
   */
  readonly notchToChamfer: 'clockwise' | 'counterclockwise' | null
}
