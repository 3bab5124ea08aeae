import type { Facing } from './orientation-drawing.ts'

/** How an engine stands, as its pictures need it. */
export interface EngineLayout {
  readonly arrangement: 'single' | 'inline' | 'v' | 'flat'
  /** Thousandths of a degree between the banks. */
  readonly bankAngle: number
  /** For the viewer in front. */
  readonly rotation: 'clockwise' | 'counterclockwise'
  readonly pistonsHaveFrontMark: boolean
}

export interface Spot {
  readonly x: number
  readonly y: number
}

/** The rods and pistons of one bank, which face alike, as who stands in front sees them. */
export interface DrawnBank {
  readonly facing: Facing
  readonly cylinders: readonly number[]
  /** Degrees from upright, clockwise. */
  readonly tilt: number
  readonly crankpin: Spot
  readonly pistonPin: Spot
  /** On which side of the piston, seen along its axis from the crank, the major thrust is. */
  readonly thrust: 'left' | 'right'
  /** Whether the other bank's rod stands in front of this one on its pin. */
  readonly behind: boolean
  /** Where its cylinders' numbers stand: past the crown, growing away from the other bank. */
  readonly label: Spot & { readonly anchor: 'start' | 'middle' | 'end' }
}

const throwLength = 26
const rodLength = 92
/** Half the width of the narrowest picture: one bank alone is not drawn larger than two. */
const leastHalf = 150
/** From the piston's pin past its crown. */
const pastCrown = 42

/**
 * One slice through each bank with the crank in the middle, y down. Rods of one pin meet on it, the pin upright between the
 * banks; a rod with a pin of its own is drawn at top centre. Lengths are the picture's, angles the engine's.
 */
export function drawFromFront(orientation: readonly Facing[], layout: EngineLayout): readonly DrawnBank[] {
  const banks = groupByBank(orientation)
  const pins = [...banks.values()].map((ofBank) => new Set(ofBank.map(({ crankpin }) => crankpin)))
  const sharesPins = pins.length === 2 && [...(pins[0] ?? [])].some((pin) => pins[1]?.has(pin))
  return [...banks.values()].flatMap((ofBank) => {
    const facing = ofBank[0]
    if (facing === undefined) return []
    const tilt = tiltOf(facing, layout)
    const axis = { x: Math.sin((tilt * Math.PI) / 180), y: -Math.cos((tilt * Math.PI) / 180) }
    const crankpin = sharesPins ? { x: 0, y: -throwLength } : { x: axis.x * throwLength, y: axis.y * throwLength }
    const along = crankpin.x * axis.x + crankpin.y * axis.y
    const across = crankpin.x * axis.y - crankpin.y * axis.x
    const reach = along + Math.sqrt(rodLength ** 2 - across ** 2)
    return [{
      facing,
      cylinders: ofBank.map(({ cylinder }) => cylinder),
      tilt,
      crankpin,
      pistonPin: { x: axis.x * reach, y: axis.y * reach },
      thrust: thrustSide(facing, tilt),
      behind: sharesPins && facing.placeOnPin === 2,
      label: {
        x: axis.x * (reach + pastCrown), y: axis.y * (reach + pastCrown),
        anchor: anchorOf(tilt),
      },
    }]
  }).toSorted((one, other) => Number(other.behind) - Number(one.behind))
}

function groupByBank(orientation: readonly Facing[]): Map<Facing['bank'], Facing[]> {
  const banks = new Map<Facing['bank'], Facing[]>()
  for (const one of orientation) banks.set(one.bank, [...(banks.get(one.bank) ?? []), one])
  return banks
}

function tiltOf({ bank }: Facing, { bankAngle }: EngineLayout): number {
  if (bank === null) return 0
  const half = bankAngle / 2_000
  return bank === 'viewer-left' ? -half : half
}

function anchorOf(tilt: number): DrawnBank['label']['anchor'] {
  if (Math.abs(tilt) < 10) return 'middle'
  return tilt > 0 ? 'start' : 'end'
}

/** A piston on its side has its left below when it points to the viewer's left, above when it points right. */
function thrustSide({ majorThrust }: Facing, tilt: number): 'left' | 'right' {
  if (majorThrust === 'left' || majorThrust === 'right') return majorThrust
  return (majorThrust === 'down') === (tilt < 0) ? 'left' : 'right'
}

/** What a bank's picture shows, in words. */
export function describeFromFront({ facing, cylinders }: DrawnBank, { pistonsHaveFrontMark }: EngineLayout): string {
  const whose = cylinders.length === 1 ? `Cylinder ${cylinders[0]}` : `Cylinders ${cylinders.join(', ')}`
  const where = facing.bank === null ? '' : facing.bank === 'viewer-left' ? ', on your left' : ', on your right'
  const rod = facing.wideChamferFaces === null
    ? 'rods have no side to watch'
    : facing.wideChamferFaces === 'front' ? 'the wide chamfer of the rods faces you' : 'the narrow side of the rods faces you'
  const mark = pistonsHaveFrontMark ? 'front marks face you; ' : ''
  return `From the front: ${whose}${where}: ${rod}; ${mark}major thrust ${thrustWords(facing.majorThrust)}.`
}

function thrustWords(side: Facing['majorThrust']): string {
  if (side === 'left' || side === 'right') return `to your ${side}`
  return side === 'up' ? 'upward' : 'downward'
}

/** The part of the drawing's plane that the picture shows, with room for the numbers. */
export function frameOf(banks: readonly DrawnBank[]): { readonly x: number; readonly y: number; readonly width: number; readonly height: number } {
  const half = Math.max(leastHalf, ...banks.map(({ pistonPin, label }) =>
    Math.max(Math.abs(pistonPin.x) + 36, Math.abs(label.x) + (label.anchor === 'middle' ? 60 : 110))))
  const top = Math.min(-44, ...banks.map(({ pistonPin, label }) => Math.min(pistonPin.y - 36, label.y - 26)))
  return { x: -half, y: top, width: 2 * half, height: 58 - top }
}
