import type { Plan } from '../plan/plan-types.ts'
import { clockedGaps, clockingFaults, starterClocking } from './clocking.ts'
import type { Clocking, ClockedGap, ClockingFault } from './clocking.ts'
import { oilGroove } from './oil-groove.ts'

/** Where the gaps of one piston are to lie, seen on the crown with the front of the engine at 12 o'clock. */
export interface RingClock {
  readonly cylinder: number
  readonly majorThrustHour: 3 | 9
  /** From the bottom groove up; angles in thousandths of a degree clockwise from the front. */
  readonly gaps: readonly { readonly gap: ClockedGap; readonly angle: number }[]
  /** What the rule finds wrong with it: nothing, unless somebody changed the rule. */
  readonly faults: readonly ClockingFault[]
}

/** Grooves in which each gap's ring lies. */
const grooveOf: Record<ClockedGap, 'top' | 'second' | 'oil'> = {
  'support-rail': 'oil', 'lower-rail': 'oil', expander: 'oil', 'upper-rail': 'oil', 'second-ring': 'second', 'top-ring': 'top',
}

/**
 * The clock of every cylinder of a plan, in the order of their numbers: from where this engine's thrust lies, the grooves
 * that its pistons have, and whether the pin bore opens the oil groove.
 * @formula ring-clocking
 */
export function ringClocks({ input, orientation }: Pick<Plan, 'input' | 'orientation'>): readonly RingClock[] {
  const { piston } = input.parts
  const grooves = new Set(piston.grooves.map(({ ring }) => ring))
  const supportRail = oilGroove(piston).state === 'broken'
  return orientation.map(({ cylinder, majorThrustHour }) => {
    const wanted = starterClocking(majorThrustHour, supportRail)
    const gaps = clockedGaps.flatMap((gap) => {
      const angle = wanted[gap]
      return angle === undefined || !grooves.has(grooveOf[gap]) ? [] : [{ gap, angle }]
    })
    const clocking: Clocking = Object.fromEntries(gaps.map(({ gap, angle }) => [gap, angle]))
    return { cylinder, majorThrustHour, gaps, faults: clockingFaults(clocking, majorThrustHour) }
  })
}
