import { round } from '../exact/rounding.ts'
import type { ReaderUnit } from '../exact/length-unit.ts'
import type { FeatureIndex } from '../features/feature-index.ts'
import { cutMoves, type Direction } from './cut-direction.ts'
import { remedySentence } from './remedy-sentence.ts'
import type { RemedyRule, Requirement } from './requirement.ts'
import type { Remedy } from './verdict.ts'
import { zoneOf } from './zones.ts'

/** A value that is outside, and on which side. */
export interface OutsideValue {
  readonly least: number
  readonly greatest: number
  readonly guardBand: number
  readonly side: 'low' | 'high' | 'both'
}

/**
 * What to do about a value outside its limits: how much metal to take off and where, or what to change. A cut
 * is reckoned to the target at the tightest place; elsewhere metal only comes off, so the rest of the feature
 * ends at the target or stays where it already is beyond it, and `reaches` says which of the two is still
 * good.
 * @formula remedy-amount
 */
export function remedyFor(
  requirement: Requirement, outside: OutsideValue, features: FeatureIndex, unit: ReaderUnit,
): Remedy {
  const chosen = chooseRule(requirement, outside.side)
  if (chosen === null) {
    return {
      action: 'investigate', amount: null, feature: null, reaches: 'neither',
      sentence: 'No remedy is set for this side of the fit: the owner decides.',
    }
  }
  const { rule, needed } = chosen
  const aim = aimOf(requirement, outside, needed)
  const change = needed === 'up' ? aim - outside.least : outside.greatest - aim
  const effect = cutMoves(requirement, rule, needed, features)
  const isCut = effect !== null && effect.direction === needed
  const reaches = isCut ? reachOf(requirement, outside, needed, aim) : 'neither'
  const amount = isCut ? round(change / effect.perBaseUnit, 'ceiling') : null
  return {
    action: rule.action,
    amount,
    feature: rule.feature,
    reaches,
    sentence: remedySentence({ requirement, rule, needed, aim, change, amount, reaches, features, unit }),
  }
}

interface ChosenRule {
  readonly rule: RemedyRule
  readonly needed: Direction
}

/** Outside on both sides, a cut can only mend one of them: what is changed for another part is preferred. */
function chooseRule({ remedy }: Requirement, side: OutsideValue['side']): ChosenRule | null {
  const low = remedy.low && { rule: remedy.low, needed: 'up' as const }
  const high = remedy.high && { rule: remedy.high, needed: 'down' as const }
  if (side === 'low') return low
  if (side === 'high') return high
  return [low, high].find((chosen) => chosen?.rule.action === 'replace') ?? low ?? high
}

/** The target; without one the middle of two limits, or the one limit with its guard band kept clear. */
function aimOf({ limits }: Requirement, { guardBand }: OutsideValue, needed: Direction): number {
  const { low, high, target } = limits
  if (target !== null) return target
  if (low !== null && high !== null) return round((low + high) / 2, 'half-even')
  return needed === 'up' ? round((low ?? 0) + guardBand, 'ceiling') : round((high ?? 0) - guardBand, 'floor')
}

function reachOf(
  { limits }: Requirement, { least, greatest }: OutsideValue, needed: Direction, aim: number,
): Remedy['reaches'] {
  const [leastAfter, greatestAfter] = needed === 'up'
    ? [Math.max(least, aim), Math.max(greatest, aim)]
    : [Math.min(least, aim), Math.min(greatest, aim)]
  // no guard band here: what the metal can become does not hang on the gauge that will measure it
  if (zoneOf(leastAfter, greatestAfter, limits, 0).kind !== 'within') return 'neither'
  return leastAfter === greatestAfter && aim === limits.target ? 'target' : 'limits'
}
