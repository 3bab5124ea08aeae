import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { drift, migrate } from '../../../apps/api/src/database/migrate.ts'
import { readMigrations } from '../../../apps/api/src/database/migrations.ts'
import { createPool } from '../../../apps/api/src/database/pool.ts'
import { schemaIsCurrent } from '../../../apps/api/src/database/schema-state.ts'
import { inSnapshot } from '../../../apps/api/src/database/transaction.ts'
import { createEmptyDatabase, createTestDatabase, type TestDatabase } from '../../support/database.ts'

let database: TestDatabase
let pool: pg.Pool
beforeAll(async () => {
  database = await createTestDatabase()
  pool = createPool(database.serviceUrl)
})
afterAll(async () => {
  await pool.end()
  await database.drop()
})

describe('the schema', () => {
  it('is what prisma/schema.prisma says once all migrations have run', async () => {
    const empty = await createEmptyDatabase()
    try {
      expect(await drift(empty.ownerUrl)).toBe('')
    } finally {
      await empty.drop()
    }
  })

  it('is current after migrating, and migrating again changes nothing', async () => {
    const names = (await readMigrations()).map(({ name }) => name)
    expect(names.length).toBeGreaterThan(0)
    expect(await schemaIsCurrent(pool, names)).toBe(true)
    expect(await schemaIsCurrent(pool, [...names, '9999_of_a_later_version'])).toBe(false)
    expect(await migrate(database.ownerUrl)).toEqual([])
  })

  it('is brought to this version once when two processes start at the same moment', async () => {
    const empty = await createEmptyDatabase()
    try {
      const applied = await Promise.all([migrate(empty.ownerUrl), migrate(empty.ownerUrl)])
      expect(applied.flat().sort()).toEqual((await readMigrations()).map(({ name }) => name))
    } finally {
      await empty.drop()
    }
  })
})

describe('a connection of the service', () => {
  it('has Postgres parse and plan a statement with values once, whoever asks it', async () => {
    const one = createPool(database.serviceUrl, { connections: 1 })
    try {
      for (const number of [1, 2, 3]) {
        expect((await one.query<{ double: number }>('SELECT $1::int * 2 AS double', [number])).rows).toEqual([{ double: 2 * number }])
      }
      const { rows } = await one.query(`SELECT statement, generic_plans + custom_plans AS runs FROM pg_prepared_statements`)
      expect(rows).toEqual([{ statement: 'SELECT $1::int * 2 AS double', runs: 3 }])
    } finally {
      await one.end()
    }
  })

  it('reads in a snapshot what was there when it began, and changes nothing', async () => {
    const insert = `INSERT INTO customer (id, name) VALUES (gen_random_uuid(), 'Somebody new')`
    const counts = await inSnapshot(pool, async (client) => {
      const count = async () => (await client.query<{ n: number }>('SELECT count(*) AS n FROM customer')).rows[0]?.n
      const before = await count()
      await pool.query(insert)
      return [before, await count()]
    })
    expect(counts[1]).toBe(counts[0])
    await expect(inSnapshot(pool, (client) => client.query(insert))).rejects.toThrow(/read-only transaction/)
  })
})

describe('the service login', () => {
  it('may not make, change or remove tables', async () => {
    await expect(pool.query('CREATE TABLE mine (id int)')).rejects.toThrow(/permission denied/)
    await expect(pool.query('DROP TABLE _prisma_migrations')).rejects.toThrow(/must be owner/)
    await expect(pool.query('DELETE FROM _prisma_migrations')).rejects.toThrow(/permission denied/)
  })

  it('reads int8 as an exact number or not at all, and a calendar day as its text', async () => {
    const { rows } = await pool.query(
      `SELECT 25400000::int8 AS length, ARRAY[1, NULL, 9007199254740991]::int8[] AS lengths,
              DATE '2024-02-29' AS day, ARRAY[DATE '2024-12-31'] AS days`,
    )
    expect(rows).toEqual([
      { length: 25_400_000, lengths: [1, null, 9_007_199_254_740_991], day: '2024-02-29', days: ['2024-12-31'] },
    ])
    await expect(pool.query('SELECT 9007199254740993::int8')).rejects.toThrow(/too large to be read exactly/)
  })
})
