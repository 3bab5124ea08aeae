import { DomainError } from '../errors.ts'
import { inRange, positive } from '../in-range.ts'

/** An elastic material: modulus in pascals. */
export interface ElasticMaterial {
  readonly modulus: number
  readonly poisson: number
}

/** A pressed joint. Lengths in nanometres; interference on diameter. */
export interface PressedJoint {
  readonly interference: number
  readonly diameter: number
  /** Outside of the hub. */
  readonly outer: number
  /** Bore of the shaft; 0 when solid. */
  readonly inner: number
  readonly hub: ElasticMaterial
  readonly shaft: ElasticMaterial
}

/** Pressure and stresses of a pressed joint, in pascals; compression negative. */
export interface JointStress {
  readonly pressure: number
  readonly hubHoop: number
  readonly shaftHoop: number
}

/**
 * Contact pressure and hoop stresses after Lamé, thick rings:
 * p = δ / { (d/Eo)[(do² + d²)/(do² − d²) + νo] + (d/Ei)[(d² + di²)/(d² − di²) − νi] }, δ on diameter;
 * hub σ = p (do² + d²)/(do² − d²), shaft σ = −p (d² + di²)/(d² − di²).
 * Source: Shigley's Mechanical Engineering Design, eqs. 7-39 to 7-47. Valid while everything stays elastic.
 * @throws DomainError `value-out-of-range` unless inner < diameter < outer and the interference is positive
 * @formula joint-stress
 */
export function jointStress(joint: PressedJoint): JointStress {
  const { diameter, outer, inner, hub, shaft } = joint
  positive(joint.interference, 'interference')
  inRange(inner, 0, Infinity, 'inner')
  positive(diameter, 'diameter')
  positive(outer, 'outer')
  // by their squares, as the formula takes them: rings too thin to be told from nothing are refused as well
  if (!(inner ** 2 < diameter ** 2 && diameter ** 2 < outer ** 2)) {
    throw new DomainError(
      'value-out-of-range',
      'Inner, joint and outer diameter must grow in this order.',
      'diameter',
    )
  }
  const hubShape = (outer ** 2 + diameter ** 2) / (outer ** 2 - diameter ** 2)
  const shaftShape = (diameter ** 2 + inner ** 2) / (diameter ** 2 - inner ** 2)
  const give =
    (hubShape + poissonOf(hub, 'hub')) / positive(hub.modulus, 'hub.modulus') +
    (shaftShape - poissonOf(shaft, 'shaft')) / positive(shaft.modulus, 'shaft.modulus')
  const pressure = joint.interference / (diameter * give)
  return { pressure, hubHoop: pressure * hubShape, shaftHoop: -pressure * shaftShape }
}

/**
 * Axial force that the joint holds, in newtons: π · d · L · p · f; lengths in nanometres, pressure in
 * pascals.
 * @formula holding-force
 */
export function holdingForce(diameter: number, length: number, pressure: number, friction: number): number {
  return (
    (Math.PI *
      positive(diameter, 'diameter') *
      positive(length, 'length') *
      positive(pressure, 'pressure') *
      inRange(friction, 0, 1, 'friction')) /
    1e18
  )
}

/**
 * Torque that the joint holds, in newton metres: holding force · d / 2.
 * @formula holding-torque
 */
export function holdingTorque(
  diameter: number,
  length: number,
  pressure: number,
  friction: number,
): number {
  return (holdingForce(diameter, length, pressure, friction) * diameter) / 2e9
}

function poissonOf({ poisson }: ElasticMaterial, field: string): number {
  return inRange(poisson, 0, 0.5, `${field}.poisson`)
}
