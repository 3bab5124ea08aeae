import { definitionText } from './definition-text.ts'
import type { Plan } from './plan-types.ts'

/** Operations by what becomes of them, as keys in the order of the route. */
export interface OperationChanges {
  readonly added: readonly string[]
  readonly removed: readonly string[]
  /** Same key, other definition: a signature under it no longer stands. */
  readonly changed: readonly string[]
  readonly same: readonly string[]
}

/** What a new plan does to the operations of the one before it. */
export function changedOperations(before: Plan, after: Plan): OperationChanges {
  const old = new Map(before.operations.map(({ key }) => [key, definitionText(before, key)]))
  const kept = after.operations.map(({ key }) => ({ key, was: old.get(key), is: definitionText(after, key) }))
  const present = new Set(kept.map(({ key }) => key))
  return {
    added: kept.filter(({ was }) => was === undefined).map(({ key }) => key),
    removed: before.operations.filter(({ key }) => !present.has(key)).map(({ key }) => key),
    changed: kept.filter(({ was, is }) => was !== undefined && was !== is).map(({ key }) => key),
    same: kept.filter(({ was, is }) => was === is).map(({ key }) => key),
  }
}
