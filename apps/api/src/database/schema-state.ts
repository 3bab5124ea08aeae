import type { Queryable } from './queryable.ts'

/**
 * Whether every migration of this version of the program is applied and none is half done. Rejects when the database
 * cannot be reached. A database that is ahead counts as current: it is being updated while this process still runs.
 */
export async function schemaIsCurrent(database: Queryable, migrations: readonly string[]): Promise<boolean> {
  const { rows } = await database.query<{ name: string; applied: boolean }>(
    `SELECT migration_name AS name, finished_at IS NOT NULL AS applied
       FROM _prisma_migrations
      WHERE rolled_back_at IS NULL`,
  )
  const applied = new Set(rows.filter((row) => row.applied).map((row) => row.name))
  return rows.every((row) => row.applied) && migrations.every((name) => applied.has(name))
}
