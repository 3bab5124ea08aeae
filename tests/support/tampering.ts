import { execFile } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import path from 'node:path'
import pg from 'pg'
import type { TestDatabase } from './database.ts'

const root = path.join(import.meta.dirname, '../..')

/** A copy of a database to be tampered with, as only somebody with superuser rights can. */
export interface Copy {
  readonly url: string
  /** Runs SQL with superuser rights, foreign keys and triggers asleep. */
  tamper(sql: string, values?: unknown[]): Promise<pg.QueryResult>
  drop(): Promise<void>
}

/** Copies a database that nobody is connected to. */
export async function copyOf(database: TestDatabase): Promise<Copy> {
  const name = `copy_${randomBytes(6).toString('hex')}`
  const original = new URL(database.superuserUrl).pathname.slice(1)
  const at = (target: string) => Object.assign(
    new URL(database.superuserUrl), { pathname: `/${target}` },
  ).href
  const run = async (target: string, statements: readonly [string, unknown[]?][]) => {
    const client = new pg.Client({ connectionString: at(target) })
    await client.connect()
    try {
      let result: pg.QueryResult | undefined
      for (const [sql, values] of statements) result = await client.query(sql, values)
      return result as pg.QueryResult
    } finally {
      await client.end()
    }
  }
  await run('postgres', [[`CREATE DATABASE ${name} TEMPLATE ${original} STRATEGY file_copy`]])
  return {
    url: at(name),
    tamper: (sql, values) => run(name, [['SET session_replication_role = replica'], [sql, values ?? []]]),
    drop: async () => void (await run('postgres', [[`DROP DATABASE ${name} WITH (FORCE)`]])),
  }
}

/** Runs `npm run verify` on a database, without npm around it: what it prints and how it ends. */
export function runVerify(databaseUrl: string): Promise<{ code: number; output: string }> {
  return new Promise((resolve) => {
    execFile(
      process.execPath, ['--import', 'tsx', 'apps/api/src/verify/command-line.ts'],
      { cwd: root, env: { ...process.env, DATABASE_URL: databaseUrl, MIGRATE_DATABASE_URL: '' } },
      (error, stdout, stderr) => resolve({
        code: error === null ? 0 : Number(error.code), output: `${stdout}${stderr}`,
      }),
    )
  })
}
