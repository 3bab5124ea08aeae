import { readFile } from 'node:fs/promises'
import path from 'node:path'
import pg from 'pg'
import { prismaFolder } from './migrations.ts'

/** Any number will do, as long as every process takes the same one. */
const GRANTS_LOCK = 7_401_583

/**
 * Gives the service login exactly what prisma/grants.sql lists, in one transaction: `:schema` and `:service` there
 * stand for the quoted names. Run as owner after each migration.
 */
export async function applyGrants(ownerUrl: string, serviceLogin: string): Promise<void> {
  const text = await readFile(path.join(prismaFolder, 'grants.sql'), 'utf8')
  const client = new pg.Client({ connectionString: ownerUrl, application_name: 'tenths grants' })
  await client.connect()
  try {
    const { rows } = await client.query<{ schema: string }>('SELECT current_schema() AS schema')
    const names = { schema: pg.escapeIdentifier(rows[0]?.schema ?? 'public'), service: pg.escapeIdentifier(serviceLogin) }
    const sql = text.replace(/(?<!:):(schema|service)\b/g, (_, name: keyof typeof names) => names[name])
    await client.query('BEGIN')
    await client.query('SELECT pg_advisory_xact_lock($1)', [GRANTS_LOCK])
    await client.query(sql)
    await client.query('COMMIT')
  } finally {
    await client.end()
  }
}
