import { definitionText, type Plan } from '@tenths/domain'
import { textHash } from '../seals/canonical.ts'

/**
 * SHA-256 of what a signature under an operation stands for: equal under two plans in which the operation is
 * the same.
 */
export function definitionHash(plan: Plan, operationKey: string): string {
  return textHash(definitionText(plan, operationKey))
}

/** The definition hashes of a plan's operations, by key. */
export function definitionHashes(plan: Plan): Map<string, string> {
  return new Map(plan.operations.map(({ key }) => [key, definitionHash(plan, key)]))
}
