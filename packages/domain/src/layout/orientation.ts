import type { EngineSpecification } from '../engine/specification.ts'
import { cylinderPositions } from './banks.ts'
import type { CylinderPosition } from './banks.ts'
import type { CylinderOrientation, EngineEnd } from './orientation-types.ts'
import { majorThrust, majorThrustHour, valleyHour } from './thrust.ts'

/**
 * Which way round everything of every cylinder stands, in the order of the cylinders' numbers.
 * The engine must have passed `validateEngine`.
 */
export function orientations(engine: EngineSpecification): readonly CylinderOrientation[] {
  return cylinderPositions(engine).map((position) => orientationOf(engine, position))
}

function orientationOf(engine: EngineSpecification, position: CylinderPosition): CylinderOrientation {
  const { crankpin, placeOnPin } = pinOf(engine, position)
  const wideChamferFaces = chamferEnd(engine, placeOnPin)
  const valley = valleyHour(engine, position.bank)
  return {
    cylinder: position.cylinder,
    bank: position.bank,
    crankpin,
    placeOnPin,
    wideChamferFaces,
    frontMark: 'front',
    majorThrust: majorThrust(engine, position.bank),
    majorThrustHour: majorThrustHour(engine),
    hand: wideChamferFaces === null ? null : wideChamferFaces === 'front' ? 'with-mark' : 'against-mark',
    valleyHour: valley,
    notchToChamfer: notchToChamfer(valley, wideChamferFaces),
  }
}

/**
 * Journals count from the front. Each half of a split pin is a journal of its own, the leading bank's
 * first.
 */
function pinOf(
  engine: EngineSpecification,
  { bank, row }: CylinderPosition,
): { crankpin: number; placeOnPin: number } {
  if (bank === null) return { crankpin: row, placeOnPin: 1 }
  const leads = bank === engine.leadingBank
  switch (engine.pinSharing) {
    case 'two-plain-rods':
      return { crankpin: row, placeOnPin: leads ? 1 : 2 }
    // The fork's two legs stand on both sides of the blade: neither rod is in front.
    case 'fork-and-blade':
      return { crankpin: row, placeOnPin: 1 }
    case 'one-rod':
    case 'split-pin':
      return { crankpin: leads ? 2 * row - 1 : 2 * row, placeOnPin: 1 }
  }
}

/**
 * The wide chamfer faces the crank cheek, the narrow sides of two rods face each other. Common practice, no
 * source.
 */
function chamferEnd(engine: EngineSpecification, placeOnPin: number): EngineEnd | null {
  if (engine.pinSharing !== 'two-plain-rods') return null
  return placeOnPin === 1 ? 'front' : 'back'
}

/**
 * The quarter turn on the crown from valve notches at the valley to the wide chamfer (front at 12, back at
 * 6).
 */
function notchToChamfer(
  valley: 3 | 9 | null,
  chamfer: EngineEnd | null,
): CylinderOrientation['notchToChamfer'] {
  if (valley === null || chamfer === null) return null
  return (valley === 9) === (chamfer === 'front') ? 'clockwise' : 'counterclockwise'
}
