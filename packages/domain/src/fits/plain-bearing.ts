import { isBoosted, isSustained } from '../engine/duty.ts'
import { round } from '../exact/rounding.ts'
import {
  between,
  FROM_MEMORY,
  guardParameter,
  parameter,
  say,
  sayShare,
  shareOf,
  THOUSANDTH,
} from './building-blocks.ts'
import type {
  ComputedRule,
  FitContext,
  FitParameter,
  ParameterReader,
  SheetNeeded,
} from './fit-definition.ts'

const PUBLISHED = 'a bearing maker’s bulletin, read in a reproduction: 0.00075–0.0010 in per inch of shaft'

/** The numbers that rod and main bearings share in kind; each fit has its own copies to edit. */
export const plainBearingParameters: readonly FitParameter[] = [
  parameter('low', 'Least clearance', 'per-diameter', 750, PUBLISHED),
  parameter('high', 'Greatest clearance', 'per-diameter', 1_000, PUBLISHED),
  parameter('floor', 'Never less without a sheet', 'length', THOUSANDTH, FROM_MEMORY),
  parameter(
    'high-allowance',
    'Added to the high limit (0.0005 in is common in racing)',
    'length',
    0,
    FROM_MEMORY,
  ),
  guardParameter('guarded-where-wide'),
]

/**
 * Clearance of a plain bearing by journal diameter; boosted and sustained engines use the upper half of the
 * band.
 */
export function plainBearingRule(
  diameter: number,
  { duty }: FitContext,
  read: ParameterReader,
): ComputedRule | SheetNeeded {
  const bandLow = shareOf(diameter, read('low'))
  const bandHigh = shareOf(diameter, read('high'))
  const upperHalf = isBoosted(duty) || isSustained(duty)
  const start = upperHalf ? round((bandLow + bandHigh) / 2, 'half-even') : bandLow
  const floor = read('floor')
  const allowance = read('high-allowance')
  const more = allowance === 0 ? '' : ` + ${say(allowance)}`
  const low = Math.max(start, floor)
  const high = bandHigh + allowance
  if (low >= high) {
    return {
      kind: 'sheet-needed',
      reason: 'The journal is too small for the rule of clearance per diameter.',
    }
  }
  return {
    kind: 'computed',
    limits: between(low, high),
    formula:
      'journal diameter × clearance per unit of diameter; the upper half when boosted or sustained; ' +
      'never under the floor',
    worked: [
      `Low: ${say(diameter)} × ${sayShare(read('low'))} = ${say(bandLow)}`,
      ...(upperHalf ? [`Upper half of the band begins at ${say(start)}`] : []),
      ...(floor > start ? [`Raised to the floor of ${say(floor)}`] : []),
      `High: ${say(diameter)} × ${sayShare(read('high'))}${more} = ${say(high)}`,
    ],
  }
}
