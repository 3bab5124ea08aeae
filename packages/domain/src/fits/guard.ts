import { DomainError } from '../errors.ts'
import type { Guard, Limits } from '../judging/requirement.ts'
import { guardChoices } from './fit-definition.ts'

/** Expanded uncertainty of an ordinary micrometer and dial bore gauge together: 0.00018 in. From memory. */
const ORDINARY_UNCERTAINTY = 4_572

/** k = 2 unless the parties agree otherwise (ISO 14253-1). From memory. */
const COVERAGE_FACTOR = 2

/**
 * Guards a fit as its rule says. `guarded-where-wide` keeps a guard band only where 2·U of ordinary gauges
 * are left between the two bands: a narrower fit could hardly ever be proven, and the shop would stop
 * believing the verdicts.
 * @throws DomainError `rule-unknown` when the rule's number names no choice.
 */
export function guardFor(choiceIndex: number, limits: Limits): Guard {
  const choice = guardChoices[choiceIndex]
  if (choice === undefined) throw new DomainError('rule-unknown', 'Guard is 0, 1 or 2.', 'guard')
  const { low, high } = limits
  const wide = low !== null && high !== null && high - low >= 4 * ORDINARY_UNCERTAINTY
  const guarded = choice === 'guarded' || (choice === 'guarded-where-wide' && wide)
  return guarded ? { kind: 'guarded', coverageFactor: COVERAGE_FACTOR } : { kind: 'none' }
}
