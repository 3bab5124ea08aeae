import { DomainError } from '../errors.ts'
import { figure, inRange } from '../in-range.ts'
import { pistonDrop } from './slider-crank.ts'
import type { SliderCrank } from './slider-crank.ts'

/** Valve lift at a crank angle: thousandths of a degree from top centre on overlap, before it negative. */
export interface LiftPoint {
  readonly angle: number
  readonly lift: number
}

/** The least room between a valve and its piston, and where it occurs. */
export interface ValveRoom {
  readonly room: number
  readonly angle: number
}

/**
 * Least axial room between valve and piston: room at top centre with the valve shut + piston drop × cosine
 * of the valve's angle − lift, along the valve's axis, at every angle given. Derived. Lengths in the
 * crank's unit.
 * @param valveAngle between valve and bore axis, thousandths of a degree, 0 to 60°
 * @throws DomainError `value-out-of-range` without a lift curve
 * @formula valve-room
 */
export function leastValveRoom(
  crank: SliderCrank,
  roomAtTopCentre: number,
  valveAngle: number,
  curve: readonly LiftPoint[],
): ValveRoom {
  const slope = Math.cos((inRange(valveAngle, 0, 60_000, 'valveAngle') * Math.PI) / 180_000)
  let least: ValveRoom | null = null
  for (const { angle, lift } of curve) {
    const room = figure(roomAtTopCentre, 'roomAtTopCentre') + pistonDrop(crank, angle) * slope - figure(lift, 'lift')
    if (least === null || room < least.room) least = { room, angle }
  }
  if (least === null) {
    throw new DomainError('value-out-of-range', 'A lift curve has one point at least.', 'curve')
  }
  return least
}
