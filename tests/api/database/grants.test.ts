import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { prismaFolder, readMigrations } from '../../../apps/api/src/database/migrations.ts'
import { openJob, startShop, type TestShop } from '../../support/shop.ts'

let shop: TestShop
let appendOnly: string[]
beforeAll(async () => {
  shop = await startShop()
  appendOnly = await readAppendOnly()
})
afterAll(() => shop.stop())

/** The tables that the migrations call *append only*, right above their names. */
async function readAppendOnly(): Promise<string[]> {
  const migrations = await readMigrations()
  return migrations.flatMap(({ sql }) => [...sql.matchAll(/-- Append only[.:][^\n]*\nCREATE TABLE (\w+)/g)].map(([, table]) => String(table)))
}

interface Granted { table: string; update: boolean; delete: boolean; truncate: boolean; trigger: boolean; references: boolean }

/** What the service's login may do to each table, as the catalogue says, inherited rights and single columns included. */
async function readGrants(): Promise<Granted[]> {
  const { rows } = await shop.pool.query<Granted>(
    `SELECT relname AS "table", has_any_column_privilege(oid, 'UPDATE') AS update,
            has_table_privilege(oid, 'DELETE') AS delete, has_table_privilege(oid, 'TRUNCATE') AS truncate,
            has_table_privilege(oid, 'TRIGGER') AS trigger, has_any_column_privilege(oid, 'REFERENCES') AS references
     FROM pg_class WHERE relnamespace = current_schema()::regnamespace AND relkind IN ('r', 'p')`,
  )
  return rows
}

describe('the service’s login', () => {
  it('no append-only table lets the service update, delete or truncate', async () => {
    expect(appendOnly).toEqual(expect.arrayContaining([
      'rule_revision', 'placement', 'plan_revision', 'pass', 'reading', 'observation', 'finding_decision', 'seal', 'sign_off',
      'signature', 'sign_off_reading', 're_opening', 'event', 'inspection', 'part_lot', 'photograph', 'plausibility_revision',
    ]))
    const grants = new Map((await readGrants()).map(({ table, ...rights }) => [table, rights]))
    for (const table of appendOnly) {
      expect(grants.get(table), table).toEqual({ update: false, delete: false, truncate: false, trigger: false, references: false })
    }
  })

  it('may change only the tables that the grants name, and truncate none', async () => {
    const sql = await readFile(path.join(prismaFolder, 'grants.sql'), 'utf8')
    const named = (/GRANT UPDATE ON([^;]+)TO/.exec(sql)?.[1] ?? '').split(',').map((name) => name.trim())
    const grants = await readGrants()
    expect(grants.filter(({ update }) => update).map(({ table }) => table).sort()).toEqual(named.sort())
    expect(grants.filter(({ truncate }) => truncate)).toEqual([])
  })

  it('is refused by Postgres itself when it tries', async () => {
    await openJob(shop)
    for (const table of appendOnly) {
      await expect(shop.pool.query(`DELETE FROM ${table}`), table).rejects.toThrow(/permission denied/)
      await expect(shop.pool.query(`TRUNCATE ${table} CASCADE`), table).rejects.toThrow(/permission denied/)
    }
    await expect(shop.pool.query(`UPDATE seal SET payload = '{}'`)).rejects.toThrow(/permission denied/)
    await expect(shop.pool.query('SELECT 1 FROM seal FOR UPDATE')).rejects.toThrow(/permission denied/)
    await expect(shop.pool.query('ALTER TABLE seal DISABLE TRIGGER ALL')).rejects.toThrow(/must be owner/)
  })
})
