import {
  DomainError, parameterUnits, starterRules, type RuleRevision, type StarterRule,
} from '@tenths/domain'
import type { Rule } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'

type WireRule = z.infer<typeof Rule>

/**
 * The shop's newest revision of each rule that it ever changed; fits without one follow the starter's
 * numbers.
 */
export async function rulesInForce(database: Queryable): Promise<RuleRevision[]> {
  const { rows } = await database.query<RuleRevision>(
    `SELECT DISTINCT ON (fit) fit, revision, parameters, source
       FROM rule_revision
      ORDER BY fit, revision DESC`,
  )
  return rows
}

/** Every rule as the owner sees it: the shop's own numbers over the starter's. */
export async function listAllRules(database: Queryable): Promise<WireRule[]> {
  const revisions = new Map((await rulesInForce(database)).map((revision) => [revision.fit, revision]))
  return starterRules().map((starter) => ruleOf(starter, revisions.get(starter.fit)))
}

/** One rule in force. @throws DomainError `rule-unknown` */
export async function readRule(database: Queryable, fit: string): Promise<WireRule> {
  const revision = (await rulesInForce(database)).find((candidate) => candidate.fit === fit)
  return ruleOf(starterOf(fit), revision)
}

/** @throws DomainError `rule-unknown` */
function starterOf(fit: string): StarterRule {
  const starter = starterRules().find((candidate) => candidate.fit === fit)
  if (starter === undefined) throw new DomainError('rule-unknown', 'There is no rule for such a fit.', 'fit')
  return starter
}

function ruleOf({ fit, title, quantity, parameters }: StarterRule, revision: RuleRevision | undefined): WireRule {
  return {
    fit,
    title,
    quantity,
    revision: revision?.revision ?? 0,
    level: revision === undefined ? 'starter' : 'shop',
    parameters: parameters.map(({ key, title: name, unit, value }) => ({
      name: key, title: name, unit, value: revision?.parameters[key] ?? value,
    })),
    source: revision?.source ?? [...new Set(parameters.map(({ source }) => source))].join('; '),
  }
}

/**
 * Checks the numbers of a new revision against the fit's own list.
 * @throws DomainError `rule-unknown` for a number that the fit does not have, `value-out-of-range` for one
 *   that it cannot use
 */
export function checkParameters(fit: string, parameters: Readonly<Record<string, number>>): void {
  const { parameters: known } = starterOf(fit)
  for (const [name, value] of Object.entries(parameters)) {
    const parameter = known.find(({ key }) => key === name)
    const field = `parameters.${name}`
    if (parameter === undefined) {
      throw new DomainError(
        'rule-unknown', `This rule has no number “${name}”.`, field,
      )
    }
    const isWhole = wholeUnits.has(parameter.unit)
    if (!Number.isFinite(value) || (isWhole && !Number.isSafeInteger(value))) {
      throw new DomainError('value-out-of-range', `“${parameter.title}” must be a whole number.`, field)
    }
    if (parameter.unit === 'guard' && (value < 0 || value > 2)) {
      throw new DomainError(
        'value-out-of-range', 'A guard is accepted, guarded, or guarded where there is room.', field,
      )
    }
  }
}

/** Lengths are whole nanometres, torques whole millinewton metres, pressures whole pascals, a guard the number of a choice. */
const wholeUnits: ReadonlySet<string> = new Set(
  parameterUnits.filter((unit) => unit !== 'per-diameter' && unit !== 'percent'),
)
