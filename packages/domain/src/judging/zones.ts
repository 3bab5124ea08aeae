import type { Guard, Limits } from './requirement.ts'
import type { Verdict, VerdictKind } from './verdict.ts'

/** A verdict on a value that is measured. */
export type Zone = Extract<VerdictKind, 'within' | 'not-proven' | 'outside'>

/** What the two limits say of a value, and which of them is to blame. */
export interface ZoneFinding {
  readonly kind: Zone
  readonly side: Verdict['side']
}

/**
 * Compares least with the low and greatest with the high limit (ISO 14253-1). With a guard band U the value
 * is within when it clears the limit by U or more, outside when it is beyond the limit by more than U, not
 * proven between. Without one U is nothing: on the limit is within, beyond it outside.
 * @formula decision-rule
 */
export function zoneOf(least: number, greatest: number, limits: Limits, guardBand: number): ZoneFinding {
  const low = limits.low === null ? 'within' : zoneOfMargin(least - limits.low, guardBand)
  const high = limits.high === null ? 'within' : zoneOfMargin(limits.high - greatest, guardBand)
  return findingOf(low, high)
}

/** Both sides as one finding: the worse of them counts, and is to blame. */
export function findingOf(low: Zone, high: Zone): ZoneFinding {
  const kind = worse(low, high)
  if (kind === 'within') return { kind, side: null }
  if (low === high) return { kind, side: 'both' }
  return { kind, side: low === kind ? 'low' : 'high' }
}

/**
 * The band kept from each limit: U = k·u when guarded, nothing under simple acceptance.
 * @formula decision-rule
 */
export function guardBandOf(guard: Guard, standardUncertainty: number): number {
  return guard.kind === 'none' ? 0 : guard.coverageFactor * standardUncertainty
}

function zoneOfMargin(margin: number, guardBand: number): Zone {
  if (margin >= guardBand) return 'within'
  return margin < -guardBand ? 'outside' : 'not-proven'
}

const order: readonly Zone[] = ['within', 'not-proven', 'outside']

function worse(one: Zone, other: Zone): Zone {
  return order.indexOf(one) >= order.indexOf(other) ? one : other
}
