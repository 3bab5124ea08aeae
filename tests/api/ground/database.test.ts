import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { drift, migrate } from '../../../apps/api/src/database/migrate.ts'
import { readMigrations } from '../../../apps/api/src/database/migrations.ts'
import { createPool } from '../../../apps/api/src/database/pool.ts'
import { schemaIsCurrent } from '../../../apps/api/src/database/schema-state.ts'
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
