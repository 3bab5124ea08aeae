import type { PartsSpecification } from '../engine/specification.ts'
import { NANOMETRES_PER_INCH, nanometresOf } from '../exact/length.ts'
import type { Nanometres } from '../exact/length.ts'
import { round } from '../exact/rounding.ts'

/** Under this margin the groove is whole on paper only: look and tick. From memory. */
const LOOK_UNDER = NANOMETRES_PER_INCH / 100

/**
 * Whether the pin bore opens the floor of the oil groove. `margin` is negative when it does, null when
 * unknown.
 */
export interface OilGroove {
  readonly state: 'whole' | 'look' | 'broken' | 'unknown'
  readonly margin: Nanometres | null
}

type PistonGeometry = Pick<
  PartsSpecification['piston'],
  'compressionHeight' | 'pinBore' | 'pinBoreMouth' | 'grooves'
>

/**
 * The groove is open where its lower flank lies deeper than compression height − half the largest diameter
 * of the pin bore's mouth. Derived. The mouth is never smaller than the bore, so a groove that the plain
 * bore already opens is broken without measuring the mouth; any other answer needs the mouth. A piston
 * without an oil groove is whole.
 * @formula oil-groove
 */
export function oilGroove(piston: PistonGeometry): OilGroove {
  const groove = piston.grooves.find(({ ring }) => ring === 'oil')
  if (groove === undefined) return { state: 'whole', margin: null }
  const lowerFlank = groove.upperFlank + groove.width
  const mouth = piston.pinBoreMouth ?? piston.pinBore
  // An odd diameter's half is rounded up: the cautious side.
  const margin = nanometresOf(piston.compressionHeight - round(mouth / 2, 'ceiling') - lowerFlank)
  if (margin < 0) return { state: 'broken', margin }
  if (piston.pinBoreMouth === null) return { state: 'unknown', margin: null }
  return { state: margin < LOOK_UNDER ? 'look' : 'whole', margin }
}
