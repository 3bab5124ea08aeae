import type { Limits, Why } from '../judging/requirement.ts'
import { ruleLevels } from '../judging/requirement.ts'
import type { SheetLimit } from '../plan/plan-types.ts'
import type { FitDefinition, FitLine } from './fit-definition.ts'
import type { RuleInForce } from './rule-in-force.ts'

/** Limits with their why. */
export interface LimitsInForce {
  readonly limits: Limits
  readonly why: Why
}

/**
 * The maker's sheet that counts for a fit: the part maker's before the engine maker's, the later before the
 * earlier.
 */
export function sheetInForce(fit: string, sheets: readonly SheetLimit[]): SheetLimit | null {
  const own = sheets.filter((sheet) => sheet.fit === fit)
  return own.reduce<SheetLimit | null>(
    (best, sheet) =>
      best === null || ruleLevels.indexOf(sheet.level) <= ruleLevels.indexOf(best.level) ? sheet : best,
    null,
  )
}

/**
 * Whose limits count, in the one place that decides it: part maker > engine maker > the shop's rule >
 * starter rule. Null when only a maker could say and no sheet is there.
 */
export function limitsInForce(
  fit: FitDefinition,
  line: FitLine,
  rule: RuleInForce,
  sheet: SheetLimit | null,
): LimitsInForce | null {
  if (sheet !== null) {
    return {
      limits: sheet.limits,
      why: {
        rule: fit.key,
        revision: rule.revision,
        level: sheet.level,
        formula: 'as the maker’s sheet says',
        worked: [`The sheet outranks the ${rule.level === 'shop' ? 'shop’s' : 'starter'} rule`],
        source: sheet.source,
      },
    }
  }
  if (line.rule.kind === 'sheet-needed') return null
  const { limits, formula, worked } = line.rule
  return {
    limits,
    why: {
      rule: fit.key,
      revision: rule.revision,
      level: rule.level,
      formula,
      worked,
      source: rule.sources(),
    },
  }
}
