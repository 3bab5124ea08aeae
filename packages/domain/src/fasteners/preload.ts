import { DomainError } from '../errors.ts'
import { inRange, positive } from '../in-range.ts'

/**
 * Torque for a preload: T = K · d · F. Any consistent units. `nutFactor` K is about 0.2 dry, less with
 * lubricant.
 * @formula tightening-torque
 */
export function torqueForPreload(preload: number, diameter: number, nutFactor: number): number {
  return positive(preload, 'preload') * positive(diameter, 'diameter') * factor(nutFactor)
}

/**
 * Preload that a torque gives: F = T / (K · d). Friction decides: expect a quarter either way (from
 * memory).
 * @formula tightening-torque
 */
export function preloadByTorque(torque: number, diameter: number, nutFactor: number): number {
  return positive(torque, 'torque') / (positive(diameter, 'diameter') * factor(nutFactor))
}

function factor(nutFactor: number): number {
  return inRange(nutFactor, 0.05, 0.5, 'nutFactor')
}

/** One length of a bolt that carries the load: shank, neck or thread in the grip. */
export interface BoltLength {
  readonly length: number
  readonly area: number
}

/** Stretch for each unit of load: the sum of L / (A · E) over the bolt's lengths. Any consistent units. */
function compliance(lengths: readonly BoltLength[], modulus: number): number {
  if (lengths.length === 0) {
    throw new DomainError('value-out-of-range', 'A bolt has one length at least.', 'lengths')
  }
  return (
    lengths.reduce(
      (sum, { length, area }) => sum + positive(length, 'length') / positive(area, 'area'),
      0,
    ) / positive(modulus, 'modulus')
  )
}

/**
 * How much longer a bolt becomes under a preload: δ = Σ F · L / (A · E). Elastic only.
 * @formula bolt-stretch
 */
export function stretchForPreload(
  preload: number,
  lengths: readonly BoltLength[],
  modulus: number,
): number {
  return positive(preload, 'preload') * compliance(lengths, modulus)
}

/**
 * Preload that a measured stretch proves: the inverse of stretchForPreload.
 * @formula bolt-stretch
 */
export function preloadByStretch(stretch: number, lengths: readonly BoltLength[], modulus: number): number {
  return positive(stretch, 'stretch') / compliance(lengths, modulus)
}

/**
 * Preload that turning on from snug gives: the advance P · angle / 360° is shared by bolt and joint as their
 * compliances. Elastic only; not for tightening beyond yield.
 * @param angle thousandths of a degree
 * @param jointCompliance how much the clamped parts give for each unit of load
 * @formula tightening-angle
 */
export function preloadByAngle(
  angle: number,
  pitch: number,
  lengths: readonly BoltLength[],
  modulus: number,
  jointCompliance: number,
): number {
  const advance = (positive(pitch, 'pitch') * inRange(angle, 0, 720_000, 'angle')) / 360_000
  return advance / (compliance(lengths, modulus) + inRange(jointCompliance, 0, Infinity, 'jointCompliance'))
}
