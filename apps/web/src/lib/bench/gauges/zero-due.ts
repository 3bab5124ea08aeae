import type { Pass } from '../sheet/operation-sheet.ts'

/** A gauge that read on a setting and was not put back on it since. */
export interface ZeroDue {
  readonly gaugeId: string
  readonly gaugeMark: string
  /** Sizes that it was set on. */
  readonly sizes: readonly number[]
  /** What a check speaks of: all that the gauge read on this job since its last zero, at whichever step. */
  readonly passes: readonly string[]
}

/** The gauges whose zero is still to be checked for the passes of this step, each once. */
export function zerosDue(passes: readonly Pass[], operationKey: string): readonly ZeroDue[] {
  const due = new Map<string, ZeroDue>()
  for (const pass of passes) {
    if (pass.operationKey !== operationKey || !isDue(pass) || pass.setting === null) continue
    const known = due.get(pass.gaugeId)
    due.set(pass.gaugeId, {
      gaugeId: pass.gaugeId, gaugeMark: pass.gaugeMark, sizes: [...new Set([...known?.sizes ?? [], pass.setting.size])],
      passes: passes.filter((other) => other.gaugeId === pass.gaugeId && isDue(other)).map(({ id }) => id),
    })
  }
  return [...due.values()]
}

function isDue({ zero, readings, setting, isVoid }: Pass): boolean {
  if (setting === null || isVoid) return false
  return zero === null || readings.some(({ takenAt }) => takenAt > zero.checkedAt)
}
