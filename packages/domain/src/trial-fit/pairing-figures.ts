import { round } from '../exact/rounding.ts'
import type { Requirement } from '../judging/requirement.ts'
import type { Verdict } from '../judging/verdict.ts'
import type { Pairing } from './suggestion-types.ts'

/** What a fit is aimed at: its target, or the middle of its limits; null where it is open to one side. */
export function targetOf({ limits: { low, high, target } }: Requirement): number | null {
  if (target !== null) return target
  return low === null || high === null ? null : round((low + high) / 2, 'half-even')
}

interface JudgedFit {
  readonly requirement: Requirement
  readonly verdict: Verdict
}

/** How well several measured fits lie, as a whole. */
export function pairingOf(fits: readonly JudgedFit[]): Pairing {
  const distances = fits.map(distanceOf)
  return {
    worstDistance: Math.max(0, ...distances),
    sumOfDistances: distances.reduce((sum, distance) => sum + distance, 0),
    leastMargin: Math.min(...fits.map(marginOf)),
    outside: fits.filter(({ verdict }) => verdict.kind === 'outside').length,
  }
}

/** From the target to whichever end of the value is farther from it. */
function distanceOf({ requirement, verdict: { least, greatest } }: JudgedFit): number {
  const target = targetOf(requirement) ?? 0
  return Math.max(Math.abs((least ?? target) - target), Math.abs((greatest ?? target) - target))
}

/** To the nearest limit; negative beyond it. */
function marginOf({ requirement: { limits }, verdict: { least, greatest } }: JudgedFit): number {
  return Math.min(
    limits.low === null || least === null ? Number.MAX_SAFE_INTEGER : least - limits.low,
    limits.high === null || greatest === null ? Number.MAX_SAFE_INTEGER : limits.high - greatest,
  )
}
