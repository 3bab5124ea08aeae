import { hasTwoBanks } from '../engine/cylinder-counts.ts'
import type { EngineSpecification, ViewerSide } from '../engine/specification.ts'
import { DomainError } from '../errors.ts'

/** Where a cylinder stands: its bank (null where there is one) and its place in the row, 1 in front. */
export interface CylinderPosition {
  readonly cylinder: number
  readonly bank: ViewerSide | null
  readonly row: number
}

/** The other side of the engine. */
export function oppositeSide(side: ViewerSide): ViewerSide {
  return side === 'viewer-left' ? 'viewer-right' : 'viewer-left'
}

/**
 * Bank and row of every cylinder, in the order of their numbers.
 * @throws DomainError `layout-impossible` when two banks are asked for without saying where cylinder 1 is.
 */
export function cylinderPositions(engine: EngineSpecification): readonly CylinderPosition[] {
  const numbers = Array.from({ length: engine.cylinders }, (_, index) => index + 1)
  if (!hasTwoBanks(engine)) return numbers.map((cylinder) => ({ cylinder, bank: null, row: cylinder }))
  const first = engine.firstBank
  if (first === null) {
    throw new DomainError('layout-impossible', 'Say on which bank cylinder 1 is.', 'engine.firstBank')
  }
  const perBank = engine.cylinders / 2
  return numbers.map((cylinder) => {
    if (engine.numbering === 'alternating') {
      return {
        cylinder,
        bank: cylinder % 2 === 1 ? first : oppositeSide(first),
        row: Math.ceil(cylinder / 2),
      }
    }
    return cylinder <= perBank
      ? { cylinder, bank: first, row: cylinder }
      : { cylinder, bank: oppositeSide(first), row: cylinder - perBank }
  })
}

/** Cylinder numbers in the order a hand meets them on the stand: all of one bank, then all of the other. */
export function cylindersInHandOrder(engine: EngineSpecification): readonly number[] {
  const positions = cylinderPositions(engine)
  const first = positions[0]?.bank ?? null
  const ofBank = (same: boolean) => positions.filter(({ bank }) => (bank === first) === same)
  return [...ofBank(true), ...ofBank(false)].map(({ cylinder }) => cylinder)
}
