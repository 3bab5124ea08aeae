import type { Rule } from '@tenths/contract'
import type { PoolClient } from 'pg'
import type { z } from 'zod'
import { ServiceError } from '../http/problem.ts'
import { checkParameters, readRule } from './rules.ts'

export interface RuleChange {
  readonly fit: string
  readonly parameters: Readonly<Record<string, number>>
  readonly source: string
  /** The revision that the owner looked at; 0 for the starter's numbers. */
  readonly basedOn: number
  readonly personId: string
}

/**
 * Adds a revision of a rule. Jobs that are open keep the numbers they were planned with until they are
 * planned again.
 * @throws ServiceError `edit-stale` when somebody revised it meanwhile; DomainError as checkParameters
 */
export async function addRuleRevision(client: PoolClient, change: RuleChange): Promise<z.infer<typeof Rule>> {
  checkParameters(change.fit, change.parameters)
  const current = await readRule(client, change.fit)
  // Numbers that are not named stay as they are in force, so that a revision says all of its rule.
  const parameters = {
    ...Object.fromEntries(current.parameters.map(({ name, value }) => [name, value])), ...change.parameters,
  }
  const { rowCount } = await client.query(
    `INSERT INTO rule_revision (fit, revision, parameters, source, made_by)
     SELECT $1, $2 + 1, $3, $4, $5 WHERE $2 = $6
     ON CONFLICT (fit, revision) DO NOTHING`,
    [
      change.fit, change.basedOn, JSON.stringify(parameters), change.source, change.personId,
      current.revision,
    ],
  )
  if (rowCount === 0) {
    throw new ServiceError(
      'edit-stale', 'Somebody changed this rule meanwhile: look at its numbers again.', 'basedOn',
    )
  }
  return readRule(client, change.fit)
}
