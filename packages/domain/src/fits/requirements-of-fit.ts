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
}

/** One fit on one engine: a requirement a line, or the finding that a maker's sheet is needed. */
export function requirementsOfFit(
  fit: FitDefinition, context: FitContext, rules: readonly RuleRevision[], sheets: readonly SheetLimit[],
): FitResult {
  const rule = ruleInForce(fit, rules)
  const sheet = sheetInForce(fit.key, sheets)
  const requirements: Requirement[] = []
  const reasons = new Set<string>()
  for (const line of fit.lines(context, rule.read)) {
    const inForce = limitsInForce(fit, line, rule, sheet)
    if (inForce === null) {
      if (line.rule.kind === 'sheet-needed') reasons.add(line.rule.reason)
      continue
    }
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
  const needed = [...reasons].map((reason) => sheetFinding(fit, reason))
  return { requirements, findings: [...needed, ...(fit.findings?.(context, rule.read) ?? [])] }
}

function sheetFinding(fit: FitDefinition, reason: string): PlanFinding {
  return {
    key: `sheet-needed/${fit.key}`,
    severity: 'look',
    title: `${fit.title}: maker’s sheet needed`,
    sentence: `${reason} Without the sheet this fit gets no verdict.`,
    worked: [],
    remedy: 'Enter the maker’s limits for this job.',
  }
}
