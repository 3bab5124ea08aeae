import { inRange } from '../in-range.ts'

/** The gaps of one piston, from the bottom groove up. */
export const clockedGaps = [
  'support-rail',
  'lower-rail',
  'expander',
  'upper-rail',
  'second-ring',
  'top-ring',
] as const
export type ClockedGap = (typeof clockedGaps)[number]

/** Where each gap lies on the crown: thousandths of a degree clockwise, front of the engine at 0. */
export type Clocking = Readonly<Partial<Record<ClockedGap, number>>>

/** How far gaps keep from each other and from the thrust faces and pin ends, in thousandths of a degree. */
export interface ClockingRule {
  readonly apart: number
  readonly fromThrust: number
  readonly fromPin: number
}

/** From memory, common practice; a ring maker's sheet outranks it. */
export const starterClockingRule: ClockingRule = { apart: 45_000, fromThrust: 30_000, fromPin: 15_000 }

/** What is wrong with a clocking. */
export interface ClockingFault {
  readonly gap: ClockedGap
  readonly against: ClockedGap | 'major-thrust' | 'minor-thrust' | 'pin'
  /** Degrees between them in thousandths, and what the rule asks for. */
  readonly distance: number
  readonly least: number
}

/** Gaps that meet the same gas or oil: ring to ring upward, and the rails to the expander between them. */
const neighbours: readonly (readonly [ClockedGap, ClockedGap])[] = [
  ['support-rail', 'lower-rail'],
  ['lower-rail', 'expander'],
  ['expander', 'upper-rail'],
  ['lower-rail', 'upper-rail'],
  ['upper-rail', 'second-ring'],
  ['second-ring', 'top-ring'],
]

/**
 * Every fault of a proposed clocking: neighbours too near each other, a gap on a thrust face or over the
 * pin. The support rail is left out against the pin: its dimple sits in the pin bore's opening and places
 * it.
 * @param majorThrustHour where the major thrust lies on this crown, as the layout says
 * @throws DomainError `value-out-of-range` for an angle outside 0 to 360°
 * @formula ring-clocking
 */
export function clockingFaults(
  clocking: Clocking,
  majorThrustHour: 3 | 9,
  rule: ClockingRule = starterClockingRule,
): readonly ClockingFault[] {
  const placed = clockedGaps.flatMap((gap) => {
    const angle = clocking[gap]
    return angle === undefined ? [] : [{ gap, angle: inRange(angle, 0, 360_000, gap) }]
  })
  const thrust = majorThrustHour === 3 ? 90_000 : 270_000
  const fixed = placed.flatMap(({ gap, angle }) => [
    fault(gap, 'major-thrust', angle, thrust, rule.fromThrust),
    fault(gap, 'minor-thrust', angle, thrust + 180_000, rule.fromThrust),
    ...(gap === 'support-rail'
      ? []
      : [fault(gap, 'pin', angle, 0, rule.fromPin), fault(gap, 'pin', angle, 180_000, rule.fromPin)]),
  ])
  const between = neighbours.map(([one, other]) => {
    const [angle, otherAngle] = [clocking[one], clocking[other]]
    return angle === undefined || otherAngle === undefined
      ? null
      : fault(one, other, angle, otherAngle, rule.apart)
  })
  return [...fixed, ...between].filter((each) => each !== null)
}

function fault(
  gap: ClockedGap,
  against: ClockingFault['against'],
  angle: number,
  other: number,
  least: number,
): ClockingFault | null {
  const distance = distanceBetween(angle, other)
  return distance < least ? { gap, against, distance, least } : null
}

/** The shorter way round between two angles. */
function distanceBetween(one: number, other: number): number {
  const turn = Math.abs(one - other) % 360_000
  return Math.min(turn, 360_000 - turn)
}

/**
 * A clocking that passes the starter rule, for a piston whose major thrust is at 3 o'clock; at 9 o'clock
 * its mirror image. No gap is farther from the major thrust than the expander's.
 */
export function starterClocking(majorThrustHour: 3 | 9, supportRail: boolean): Clocking {
  const atThree: Clocking = {
    'lower-rail': 160_000,
    expander: 225_000,
    'upper-rail': 320_000,
    'second-ring': 130_000,
    'top-ring': 315_000,
    ...(supportRail ? { 'support-rail': 0 } : {}),
  }
  if (majorThrustHour === 3) return atThree
  return Object.fromEntries(
    Object.entries(atThree).map(([gap, angle]) => [gap, (360_000 - angle) % 360_000]),
  )
}
