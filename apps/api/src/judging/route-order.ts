import type { Operation } from '@tenths/domain'

/** For each operation the keys of all that come before it, at any distance. */
export function allBefore(operations: readonly Operation[]): ReadonlyMap<string, ReadonlySet<string>> {
  const byKey = new Map(operations.map((operation) => [operation.key, operation]))
  const known = new Map<string, ReadonlySet<string>>()
  const before = (key: string): ReadonlySet<string> => {
    const found = known.get(key)
    if (found !== undefined) return found
    const keys = new Set((byKey.get(key)?.after ?? []).flatMap((earlier) => [earlier, ...before(earlier)]))
    known.set(key, keys)
    return keys
  }
  for (const { key } of operations) before(key)
  return known
}

/** Operations before this one, however far, that are not signed yet, in the route's order. */
export function unsignedBefore(
  operations: readonly Operation[], before: ReadonlySet<string>, isSigned: (key: string) => boolean,
): Operation[] {
  return operations.filter(({ key }) => before.has(key) && !isSigned(key))
}
