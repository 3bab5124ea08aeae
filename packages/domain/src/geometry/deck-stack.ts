import type { EngineSpecification, PartsSpecification } from '../engine/specification.ts'
import { nanometresOf } from '../exact/length.ts'
import type { Nanometres } from '../exact/length.ts'
import { round } from '../exact/rounding.ts'

/**
 * Deck clearance in nanometres: how far the flat of the piston stands below the deck at top centre;
 * negative above it. deck height − (stroke/2 + rod length + compression height), the deck height counted
 * from the main-bore centreline. Derived from the geometry. Half a stroke is rounded to a whole nanometre,
 * half to even.
 * @formula deck-stack
 */
export function deckClearance(
  engine: Pick<EngineSpecification, 'deckHeight' | 'stroke'>,
  rodLength: Nanometres,
  compressionHeight: PartsSpecification['piston']['compressionHeight'],
): Nanometres {
  return nanometresOf(
    engine.deckHeight - round(engine.stroke / 2, 'half-even') - rodLength - compressionHeight,
  )
}
