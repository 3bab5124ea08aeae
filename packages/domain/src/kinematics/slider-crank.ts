import { DomainError } from '../errors.ts'
import { inRange, positive } from '../in-range.ts'

/**
 * Crank and rod without offset, in any one unit of length. The rod must be longer than half the stroke, or
 * the crank could not turn.
 */
export interface SliderCrank {
  readonly stroke: number
  readonly rod: number
}

const RADIANS = Math.PI / 180_000

/** Throw r, rod l, sine and cosine of the angle, and √(l² − r² sin²θ), the rod's height along the bore. */
function figures({ stroke, rod }: SliderCrank, angle: number) {
  const r = positive(stroke, 'stroke') / 2
  positive(rod, 'rod')
  // a rod of just half the stroke would stand still at 90°
  if (rod <= r * 1.000_001) {
    throw new DomainError('value-out-of-range', 'This rod is too short for the crank to turn.', 'rod')
  }
  inRange(angle, -1e9, 1e9, 'angle')
  const [sine, cosine] = [Math.sin(angle * RADIANS), Math.cos(angle * RADIANS)]
  return { r, l: rod, sine, cosine, height: Math.sqrt(rod * rod - (r * sine) ** 2) }
}

/**
 * How far the piston is below top centre, exactly: x = r(1 − cos θ) + l − √(l² − r² sin² θ).
 * @param angle crank angle after top centre in thousandths of a degree
 * @returns in the unit of the crank's lengths
 * @throws DomainError `value-out-of-range` for a crank that cannot turn
 * @formula piston-drop
 */
export function pistonDrop(crank: SliderCrank, angle: number): number {
  const { r, l, cosine, sine, height } = figures(crank, angle)
  // l − √(l² − r² sin² θ) without the difference of two nearly equal numbers
  return r * (1 - cosine) + (r * sine) ** 2 / (l + height)
}

/**
 * Piston speed away from top centre for each radian of crank: dx/dθ = r sin θ (1 + r cos θ / √(l² − r² sin²
 * θ)). Times the crank's angular speed in radians a second it is the speed in length units a second.
 * @formula piston-speed
 */
export function pistonSpeed(crank: SliderCrank, angle: number): number {
  const { r, sine, cosine, height } = figures(crank, angle)
  return r * sine * (1 + (r * cosine) / height)
}

/**
 * Piston acceleration for each radian of crank squared: d²x/dθ² = r cos θ + r² (cos 2θ · s² + r² sin² θ
 * cos² θ) / s³ with s = √(l² − r² sin² θ). Times the angular speed squared it is the acceleration at
 * constant speed.
 * @formula piston-acceleration
 */
export function pistonAcceleration(crank: SliderCrank, angle: number): number {
  const { r, sine, cosine, height } = figures(crank, angle)
  const doubled = cosine * cosine - sine * sine
  return r * cosine + (r * r * (doubled * height * height + (r * sine * cosine) ** 2)) / height ** 3
}

/**
 * Where on the way down the piston is fastest, in thousandths of a degree after top centre: never past 90°.
 * @formula fastest-angle
 */
export function fastestAngle(crank: SliderCrank): number {
  let [below, above] = [0, 90_000]
  // Acceleration is positive at top centre and negative at 90°; sixty halvings reach the last bit of a
  // double.
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (below + above) / 2
    if (pistonAcceleration(crank, middle) > 0) below = middle
    else above = middle
  }
  return (below + above) / 2
}

/**
 * Mean piston speed in length units a second: 2 · stroke · turns a minute / 60.
 * @formula mean-piston-speed
 */
export function meanPistonSpeed(stroke: number, turnsPerMinute: number): number {
  return (2 * positive(stroke, 'stroke') * inRange(turnsPerMinute, 0, 30_000, 'turnsPerMinute')) / 60
}
