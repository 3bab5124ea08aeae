import { assemblyRoute } from './assembly.ts'
import { fittingRoute } from './fitting.ts'
import { handoverRoute } from './handover.ts'
import { inspectionRoute } from './inspection.ts'
import { intakeRoute } from './intake.ts'
import { machiningRoute } from './machining.ts'
import { planningRoute } from './planning.ts'
import type { LeftOut, OperationDraft, RouteContext } from './route-context.ts'

/**
 * The route of a short block, from memory, common practice; the shop edits it. Variants follow geometry,
 * duty and what was ordered.
 */
export function shortBlockRoute(context: RouteContext): readonly OperationDraft[] {
  const stages = [
    intakeRoute, inspectionRoute, planningRoute, machiningRoute, fittingRoute, assemblyRoute, handoverRoute,
  ].map((route) => route(context))
  const steps = stages.flatMap((stage) => stage.steps)
  const leftOut = new Map(stages.flatMap((stage) => stage.leftOut).map((step) => [step.key, step]))
  return steps.map((step) => ({ ...step, after: present(step.after, leftOut) }))
}

/** A step that is left out passes its place in the order on to what stood before it. */
function present(after: readonly string[], leftOut: ReadonlyMap<string, LeftOut>): readonly string[] {
  const through = (key: string): readonly string[] => {
    const missing = leftOut.get(key)
    return missing === undefined ? [key] : missing.after.flatMap(through)
  }
  return [...new Set(after.flatMap(through))]
}
