import { assemblyRoute } from './assembly.ts'
import { fittingRoute } from './fitting.ts'
import { handoverRoute } from './handover.ts'
import { inspectionRoute } from './inspection.ts'
import { intakeRoute } from './intake.ts'
import { machiningRoute } from './machining.ts'
import { planningRoute } from './planning.ts'
import type { LeftOut, OperationDraft, RouteContext, StageRoute } from './route-context.ts'

/**
 * The route of one kind of work, from memory, common practice; the shop edits it. There is one order of
 * steps for all of them; variants follow the kind of work, geometry, duty and what was ordered.
 */
export function routeOf(context: RouteContext): readonly OperationDraft[] {
  const stages = [
    intakeRoute, inspectionRoute, planningRoute, machiningRoute, fittingRoute, assemblyRoute, handoverRoute,
  ].map((route) => ofThisWork(route(context), context.scope.steps))
  const steps = stages.flatMap((stage) => stage.steps)
  const leftOut = new Map(stages.flatMap((stage) => stage.leftOut).map((step) => [step.key, step]))
  return steps.map((step) => ({ ...step, after: present(step.after, leftOut) }))
}

/** Leaves out what this kind of work does not have. */
function ofThisWork({ steps, leftOut }: StageRoute, kept: ReadonlySet<string> | null): StageRoute {
  if (kept === null) return { steps, leftOut }
  return {
    steps: steps.filter(({ key }) => kept.has(key)),
    leftOut: [...leftOut, ...steps.filter(({ key }) => !kept.has(key))],
  }
}

/** A step that is left out passes its place in the order on to what stood before it. */
function present(after: readonly string[], leftOut: ReadonlyMap<string, LeftOut>): readonly string[] {
  const through = (key: string): readonly string[] => {
    const missing = leftOut.get(key)
    return missing === undefined ? [key] : missing.after.flatMap(through)
  }
  return [...new Set(after.flatMap(through))]
}
