/**
 * A fresh value in which everything that has not changed is the very object that it was before: what is drawn from
 * that is left alone. Plain data only, as JSON has it; neither value is changed.
 */
export function keepSame<T>(before: T | undefined, fresh: T): T {
  return share(before, fresh) as T
}

/** Keeps the list of before as long as each of its members is the same. */
export function steadyList<T>(): (fresh: readonly T[]) => readonly T[] {
  let before: readonly T[] = []
  return (fresh) => {
    const isSame = before.length === fresh.length && before.every((one, index) => one === fresh[index])
    if (!isSame) before = fresh
    return before
  }
}

function share(before: unknown, fresh: unknown): unknown {
  if (before === fresh || typeof before !== 'object' || typeof fresh !== 'object' || before === null || fresh === null) return fresh
  if (Array.isArray(before) !== Array.isArray(fresh)) return fresh
  return Array.isArray(before) && Array.isArray(fresh)
    ? shareItems(before, fresh)
    : shareFields(before as Fields, fresh as Fields)
}

type Fields = Readonly<Record<string, unknown>>

function shareItems(before: readonly unknown[], fresh: readonly unknown[]): readonly unknown[] {
  const shared = fresh.map((item, index) => share(before[index], item))
  return before.length === shared.length && shared.every((item, index) => item === before[index]) ? before : shared
}

function shareFields(before: Fields, fresh: Fields): Fields {
  const shared = Object.entries(fresh).map(([name, value]) => [name, share(before[name], value)] as const)
  const isSame = shared.length === Object.keys(before).length && shared.every(([name, value]) => name in before && value === before[name])
  return isSame ? before : Object.fromEntries(shared)
}
