import { add, nanometresOf, subtract, type Nanometres } from '../exact/length.ts'

/** Deviations from the nominal size. */
export interface Deviations {
  readonly lower: Nanometres
  readonly upper: Nanometres
}

/** Least and greatest size, or clearance; a negative clearance is an interference. */
export interface SizeLimits {
  readonly least: Nanometres
  readonly greatest: Nanometres
}

/** A hole and the shaft that goes into it. */
export interface Fit {
  readonly name: string
  readonly nominal: Nanometres
  readonly hole: SizeLimits
  readonly shaft: SizeLimits
  readonly clearance: SizeLimits
  readonly character: 'clearance' | 'transition' | 'interference'
  /** The standard's table or rule that gave it. */
  readonly source: string
}

/** The sizes that two deviations allow. */
export function sizesOf(nominal: Nanometres, { lower, upper }: Deviations): SizeLimits {
  return { least: add(nominal, lower), greatest: add(nominal, upper) }
}

/**
 * Puts a hole and a shaft together: clearance = hole − shaft, at its least and its greatest.
 * @formula fit-clearance
 */
export function fitOf(
  name: string, nominal: Nanometres, hole: Deviations, shaft: Deviations, source: string,
): Fit {
  const holeSizes = sizesOf(nominal, hole)
  const shaftSizes = sizesOf(nominal, shaft)
  const clearance = {
    least: subtract(holeSizes.least, shaftSizes.greatest),
    greatest: subtract(holeSizes.greatest, shaftSizes.least),
  }
  return { name, nominal, hole: holeSizes, shaft: shaftSizes, clearance, character: characterOf(clearance), source }
}

function characterOf({ least, greatest }: SizeLimits): Fit['character'] {
  if (least >= 0) return 'clearance'
  return greatest <= 0 ? 'interference' : 'transition'
}

/** The same deviations seen from the other side of the zero line: a shaft's becomes a hole's. */
export function mirrored({ lower, upper }: Deviations): Deviations {
  return { lower: nanometresOf(0 - upper), upper: nanometresOf(0 - lower) }
}
