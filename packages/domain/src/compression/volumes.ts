import { figure, inRange, positive } from '../in-range.ts'

/** Cubic nanometres in a cubic millimetre. */
const CUBIC = 1e18

/**
 * A disc's volume in cubic millimetres: π/4 · d² · h, lengths in nanometres; negative for a negative
 * height.
 * @formula swept-volume
 */
export function discVolume(diameter: number, height: number): number {
  return ((Math.PI / 4) * positive(diameter, 'diameter') ** 2 * figure(height, 'height')) / CUBIC
}

/**
 * What one piston sweeps, in cubic millimetres: π/4 · bore² · stroke, lengths in nanometres.
 * @formula swept-volume
 */
export function sweptVolume(bore: number, stroke: number): number {
  return discVolume(bore, positive(stroke, 'stroke'))
}

/**
 * Displacement of the engine in cubic millimetres.
 * @formula displacement
 */
export function displacement(engine: {
  readonly bore: number
  readonly stroke: number
  readonly cylinders: number
}): number {
  return sweptVolume(engine.bore, engine.stroke) * inRange(engine.cylinders, 1, 16, 'cylinders')
}

/** Everything that the mixture fills at top centre. Volumes in cubic millimetres, lengths in nanometres. */
export interface ClearanceParts {
  readonly bore: number
  readonly chamber: number
  /** Compressed head gasket; its opening is usually larger than the bore. */
  readonly gasket: { readonly diameter: number; readonly thickness: number }
  /** Piston below deck; negative when it stands out. */
  readonly deckClearance: number
  /** Dish and valve pockets, counted positive; a dome is negative. */
  readonly dish: number
  /** The ring-shaped gap above the top ring: its depth, and the piston's diameter there. */
  readonly crevice: { readonly depth: number; readonly landDiameter: number }
}

/**
 * Clearance volume in cubic millimetres: chamber + gasket + deck + dish + crevice.
 * @throws DomainError `value-out-of-range` for a land wider than the bore or when nothing is left at top
 *   centre
 * @formula clearance-volume
 */
export function clearanceVolume(parts: ClearanceParts): number {
  const { bore, chamber, gasket, deckClearance, dish, crevice } = parts
  inRange(crevice.landDiameter, 0, bore, 'crevice.landDiameter')
  inRange(crevice.depth, 0, Infinity, 'crevice.depth')
  const land = ((Math.PI / 4) * (bore ** 2 - crevice.landDiameter ** 2) * crevice.depth) / CUBIC
  const volume = positive(chamber, 'chamber') + discVolume(gasket.diameter, gasket.thickness)
    + discVolume(bore, deckClearance) + figure(dish, 'dish') + land
  return positive(volume, 'clearanceVolume')
}
