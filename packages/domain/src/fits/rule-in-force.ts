import { DomainError } from '../errors.ts'
import type { RuleLevel } from '../judging/requirement.ts'
import type { RuleRevision } from '../plan/plan-types.ts'
import type { FitDefinition, FitParameter } from './fit-definition.ts'

/** The numbers that a fit is worked out with, and whose they are. */
export interface RuleInForce {
  readonly level: Extract<RuleLevel, 'shop' | 'starter'>
  /** 0 for the starter rule. */
  readonly revision: number
  /** @throws DomainError `rule-unknown` for a number that the fit does not have. */
  readonly read: (key: string) => number
  /** Where the numbers that were read so far come from. */
  readonly sources: () => string
}

/**
 * The shop's newest revision of a fit over the starter's numbers; numbers that it leaves out stay the
 * starter's.
 * @throws DomainError `rule-unknown` when the revision names a number that the fit does not have.
 */
export function ruleInForce(fit: FitDefinition, revisions: readonly RuleRevision[]): RuleInForce {
  const newest = revisions
    .filter((rule) => rule.fit === fit.key)
    .reduce<RuleRevision | null>(
      (best, rule) => (best === null || rule.revision > best.revision ? rule : best),
      null,
    )
  for (const key of Object.keys(newest?.parameters ?? {})) parameterOf(fit, key)
  const used = new Set<string>()
  return {
    level: newest === null ? 'starter' : 'shop',
    revision: newest?.revision ?? 0,
    read(key) {
      const own = newest?.parameters[key]
      const starter = parameterOf(fit, key)
      if (starter.unit !== 'guard') {
        used.add(own === undefined ? starter.source : (newest?.source ?? starter.source))
      }
      return own ?? starter.value
    },
    sources: () => [...used].join('; '),
  }
}

function parameterOf(fit: FitDefinition, key: string): FitParameter {
  const found = fit.parameters.find((parameter) => parameter.key === key)
  if (found === undefined) {
    throw new DomainError('rule-unknown', `The rule “${fit.title}” has no number “${key}”.`, key)
  }
  return found
}
