import { Pool } from 'pg'
import type { Queryable } from './queryable.ts'

type Loads = Readonly<Record<string, () => Promise<unknown>>>
type Loaded<L extends Loads> = { readonly [Name in keyof L]: Awaited<ReturnType<L[Name]>> }

/**
 * Loads several things that do not need each other: side by side where there is a pool, and one after the other inside a
 * transaction, whose client has one line to the database.
 */
export async function loadAll<L extends Loads>(database: Queryable, loads: L): Promise<Loaded<L>> {
  const names = Object.keys(loads)
  const values: unknown[] = []
  if (database instanceof Pool) values.push(...await Promise.all(names.map((name) => loads[name]?.())))
  else for (const name of names) values.push(await loads[name]?.())
  return Object.fromEntries(names.map((name, index) => [name, values[index]])) as Loaded<L>
}
