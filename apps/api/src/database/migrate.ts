import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import path from 'node:path'
import { PrismaPg } from '@prisma/adapter-pg'
import {
  bindMigrationAwareSqlAdapterFactory,
  ColumnTypeEnum,
  type ColumnType,
  type SqlDriverAdapter,
  type SqlQuery,
  type SqlResultSet,
} from '@prisma/driver-adapter-utils'
import * as engineModule from '@prisma/schema-engine-wasm/schema_engine_bg'
import type { MigrationList, SchemaEngine } from '@prisma/schema-engine-wasm'
import pg from 'pg'
import { Refusal } from '../refusal.ts'
import { prismaFolder, readMigrations } from './migrations.ts'

/** Nothing in the database is kept from the engine. */
const filters = { externalTables: [], externalEnums: [] }

/**
 * Applies every migration that the database does not have yet, each in one transaction, and notes it in
 * `_prisma_migrations` as Prisma's command line does. The engine takes an advisory lock, so that of two processes
 * one waits for the other. Returns the names that were applied; throws a {@link Refusal} when one fails.
 */
export async function migrate(ownerUrl: string): Promise<readonly string[]> {
  return withEngine(ownerUrl, async (engine) => {
    const answer = await engine.applyMigrations({ migrationsList: await migrationList(), filters })
    return answer.appliedMigrationNames
  })
}

/**
 * The SQL that would lead from what the migrations make to what `schema.prisma` says; empty when they agree.
 * `emptyDatabaseUrl` names a database without tables, in which the migrations are replayed.
 */
export async function drift(emptyDatabaseUrl: string): Promise<string> {
  const file = path.join(prismaFolder, 'schema.prisma')
  return withEngine(emptyDatabaseUrl, async (engine) => {
    const answer = await engine.diff({
      from: { tag: 'migrations', ...(await migrationList()) },
      to: { tag: 'schemaDatamodel', files: [{ path: file, content: await readFile(file, 'utf8') }] },
      script: true,
      exitCode: true,
      filters,
    })
    return answer.exitCode === 0 ? '' : (answer.stdout ?? '').trim()
  })
}

async function migrationList(): Promise<MigrationList> {
  const baseDir = path.join(prismaFolder, 'migrations')
  const migrations = await readMigrations()
  return {
    baseDir,
    lockfile: { path: 'migration_lock.toml', content: await readFile(path.join(baseDir, 'migration_lock.toml'), 'utf8') },
    shadowDbInitScript: '',
    migrationDirectories: migrations.map(({ name, sql }) => ({
      path: name,
      migrationFile: { path: 'migration.sql', content: { tag: 'ok', value: sql } },
    })),
  }
}

/** Its session ends with the run: the engine's lock is held until then, and the next one would wait for it. */
async function withEngine<Result>(url: string, work: (engine: SchemaEngine) => Promise<Result>): Promise<Result> {
  await loadEngine()
  const schema = path.join(prismaFolder, 'schema.prisma')
  const pool = withCharAsTime(new pg.Pool({ connectionString: url, max: 1, application_name: 'tenths migrations' }))
  const adapter = bindMigrationAwareSqlAdapterFactory(new WholeScripts(pool))
  const engine = await engineModule.SchemaEngine.new(
    { datamodels: [[schema, await readFile(schema, 'utf8')]] },
    () => undefined,
    adapter,
  )
  try {
    return await work(engine)
  } catch (error) {
    throw new Refusal(`The database could not be brought to this version: ${sentence(error)}`)
  } finally {
    engine.free()
    await pool.end()
  }
}

/**
 * Prisma's adapter cuts a script at each semicolon, comments and function bodies included, and sends the pieces one by
 * one. Sent whole, Postgres reads it correctly and runs it as one transaction.
 */
class WholeScripts extends PrismaPg {
  override async connect() {
    return whole(await super.connect())
  }

  /** Where migrations are replayed: in the very database that was given, which `drift` asks to be empty. */
  override async connectToShadowDb() {
    return this.connect()
  }
}

// Describing a schema, the engine reads catalogue columns of the type "char", which Prisma's adapter refuses. They pass
// through it under the number of a type that no catalogue has (time of day) and come out as what they are.
const CHAR = 18
const TIME = 1083

function withCharAsTime(pool: pg.Pool): pg.Pool {
  const query = pool.query.bind(pool) as (config: pg.QueryConfig | string) => Promise<pg.QueryResult>
  return Object.assign(pool, {
    query: async (config: pg.QueryConfig | string) => {
      const result = await query(config)
      for (const field of result.fields ?? []) if (field.dataTypeID === CHAR) field.dataTypeID = TIME
      return result
    },
  })
}

function timeAsChar(answer: SqlResultSet): SqlResultSet {
  const restored = (type: ColumnType) => (type === ColumnTypeEnum.Time ? ColumnTypeEnum.Character : type)
  return { ...answer, columnTypes: answer.columnTypes.map(restored) }
}

type Adapter = Awaited<ReturnType<PrismaPg['connect']>>

function whole(adapter: Adapter): Adapter {
  const queryRaw = adapter.queryRaw.bind(adapter)
  const changed: Pick<SqlDriverAdapter, 'executeScript' | 'queryRaw'> = {
    queryRaw: async (query: SqlQuery) => timeAsChar(await queryRaw(query)),
    executeScript: async (script) => {
      await adapter.underlyingDriver().query(script)
    },
  }
  return Object.assign(adapter, changed)
}

let loaded: Promise<void> | undefined

/** Node's own types know WebAssembly only as a namespace of types. */
const { WebAssembly: webAssembly } = globalThis as unknown as {
  WebAssembly: {
    instantiate: (bytes: Uint8Array, imports: object) => Promise<{ instance: { exports: { __wbindgen_start: () => void } } }>
  }
}

/** The package is made for bundlers, which would instantiate its WebAssembly by themselves. */
function loadEngine(): Promise<void> {
  loaded ??= (async () => {
    const entry = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg')
    const bytes = await readFile(path.join(path.dirname(entry), 'schema_engine_bg.wasm'))
    const { instance } = await webAssembly.instantiate(bytes, { './schema_engine_bg.js': { ...engineModule } })
    engineModule.__wbg_set_wasm(instance.exports)
    instance.exports.__wbindgen_start()
  })()
  return loaded
}

function sentence(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).trim().replace(/\s+/g, ' ')
}
