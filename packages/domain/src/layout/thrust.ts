import type { EngineSpecification, ViewerSide } from '../engine/specification.ts'
import type { CylinderOrientation } from './orientation-types.ts'

/** A quarter turn seen by the viewer in front of the engine. */
type QuarterTurn = 'counterclockwise' | 'clockwise'

/**
 * From the cylinder's axis (crank to crown) to its major thrust side. On the power stroke a crank that
 * turns clockwise carries its pin to the viewer's right of an upright cylinder; the rod, pressed, leans the
 * other way and pushes the piston to the left: a quarter turn counterclockwise from the axis. Derived.
 */
function turnToThrust(engine: EngineSpecification): QuarterTurn {
  return engine.rotation === 'clockwise' ? 'counterclockwise' : 'clockwise'
}

/**
 * The side that takes the major thrust, for the viewer in front; up or down where the cylinder lies flat.
 * @formula major-thrust
 */
export function majorThrust(
  engine: EngineSpecification,
  bank: ViewerSide | null,
): CylinderOrientation['majorThrust'] {
  const turn = turnToThrust(engine)
  if (engine.arrangement !== 'flat') return turn === 'counterclockwise' ? 'left' : 'right'
  // A lying cylinder points to its own side: a quarter turn from there is down or up.
  const pointsLeft = bank === 'viewer-left'
  return pointsLeft === (turn === 'counterclockwise') ? 'down' : 'up'
}

/**
 * The same side on the crown, front at 12. Who looks down on the crown with the front up has to the right
 * what a quarter turn counterclockwise (for the viewer in front) from the axis points to, so the hour hangs
 * on the rotation alone.
 */
export function majorThrustHour(engine: EngineSpecification): 3 | 9 {
  return turnToThrust(engine) === 'counterclockwise' ? 3 : 9
}

/** Where the valley between the banks lies on the crown, front at 12; null without a valley. Derived. */
export function valleyHour(engine: EngineSpecification, bank: ViewerSide | null): 3 | 9 | null {
  if (engine.arrangement !== 'v' || bank === null) return null
  return bank === 'viewer-left' ? 9 : 3
}
