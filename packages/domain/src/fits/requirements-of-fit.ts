import type { Requirement } from '../judging/requirement.ts'
import type { PlanFinding, RuleRevision, SheetLimit } from '../plan/plan-types.ts'
import type { FitContext, FitDefinition } from './fit-definition.ts'
import { guardFor } from './guard.ts'
import { limitsInForce, sheetInForce } from './limits-in-force.ts'
import { ruleInForce } from './rule-in-force.ts'

/** What one fit adds to a plan. */
export interface FitResult {
  readonly requirements: readonly Requirement[]
  readonly findings: readonly PlanFinding[]
  /** Why its lines got no limits: only a maker's sheet could give them. */
  readonly sheetReasons: readonly string[]
}

/** One fit on one engine: a requirement a line, or the reason why a maker's sheet is needed. */
export function requirementsOfFit(
  fit: FitDefinition, context: FitContext, rules: readonly RuleRevision[], sheets: readonly SheetLimit[],
): FitResult {
  const rule = ruleInForce(fit, rules)
  const sheet = sheetInForce(fit.key, sheets)
  const requirements: Requirement[] = []
  const reasons = new Set<string>()
  for (const line of fit.lines(context, rule.read)) {
    const inForce = limitsInForce(fit, line, rule, sheet)
    if (line.rule.kind === 'sheet-needed') reasons.add(line.rule.reason)
    if (inForce === null) continue
    requirements.push({
      key: `${fit.key}/${line.position ?? 'engine'}`,
      fit: fit.key,
      title: line.title,
      position: line.position,
      quantity: line.quantity,
      measurand: line.measurand,
      limits: inForce.limits,
      guard: guardFor(rule.read('guard'), inForce.limits),
      critical: fit.critical,
      remedy: line.remedy,
      why: inForce.why,
    })
  }
  return { requirements, findings: fit.findings?.(context, rule.read) ?? [], sheetReasons: [...reasons] }
}
