import { DomainError } from '../errors.ts'
import { LARGEST } from '../in-range.ts'
import { mean } from '../statistics/sample.ts'

/** Under this many radii a section's centre and shape cannot be told apart. */
const FEWEST_RADII = 6

/**
 * Roundness of one section on radius: the radial distance between the two circles about the least-squares centre that
 * enclose the profile (ISO 12181 least-squares reference circle, from memory; holds for a centre offset small against
 * the radius). Unlike a two-point out-of-round, which is a difference of diameters, it sees odd lobes. Unit of the radii.
 * @param radii equally spaced around the section, from any centre near the middle
 * @throws DomainError `point-unknown` for fewer than six radii, `value-out-of-range` for one that is not a length
 * @formula radial-roundness
 */
export function radialRoundness(radii: readonly number[]): number {
  if (radii.length < FEWEST_RADII) {
    throw new DomainError('point-unknown', `Roundness from a circle needs ${FEWEST_RADII} radii at least.`)
  }
  if (!radii.every((radius) => radius > 0 && radius <= LARGEST)) {
    throw new DomainError('value-out-of-range', 'A radius is a length greater than nothing.')
  }
  const angles = radii.map((_, index) => (2 * Math.PI * index) / radii.length)
  const radius = mean(radii)
  const offsetX = 2 * mean(radii.map((each, index) => (each - radius) * Math.cos(angles[index] ?? 0)))
  const offsetY = 2 * mean(radii.map((each, index) => (each - radius) * Math.sin(angles[index] ?? 0)))
  const residuals = radii.map((each, index) => {
    const angle = angles[index] ?? 0
    return each - radius - offsetX * Math.cos(angle) - offsetY * Math.sin(angle)
  })
  return Math.max(...residuals) - Math.min(...residuals)
}
