import type { Plan } from '@tenths/domain'
import type { KnownSignOff } from '../judging/evidence.ts'
import { definitionHashes } from './definition-hash.ts'

/** What a new plan does to one operation. */
export interface OperationChange {
  readonly key: string
  readonly title: string
  readonly change: 'added' | 'removed' | 'changed'
  /** A live signature stands under another definition than the new one. */
  readonly reopens: boolean
}

/**
 * The operations that a new plan adds, drops or defines otherwise, in the order of the route. A signature on
 * a step that is dropped is left as it was sealed; should the step come back otherwise defined, it re-opens
 * then.
 */
export function changesBetween(
  before: Plan, after: Plan, signOffs: readonly KnownSignOff[],
): OperationChange[] {
  const old = definitionHashes(before)
  const fresh = definitionHashes(after)
  const signed = new Map(
    signOffs.filter(({ live }) => live).map((one) => [one.operationKey, one.definitionHash]),
  )
  const kept = after.operations.flatMap(({ key, title }): OperationChange[] => {
    const hash = fresh.get(key)
    if (old.get(key) === hash) return []
    const signedHash = signed.get(key)
    return [{
      key, title, change: old.has(key) ? 'changed' : 'added',
      reopens: signedHash !== undefined && signedHash !== hash,
    }]
  })
  const dropped = before.operations.filter(({ key }) => !fresh.has(key))
  return [
    ...kept, ...dropped.map(({ key, title }) => ({ key, title, change: 'removed' as const, reopens: false }))
  ]
}
