import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { TestProject } from 'vitest/node'
import { applyGrants } from '../../apps/api/src/database/grants.ts'
import { migrate } from '../../apps/api/src/database/migrate.ts'
import { ensureOwnDatabase, SERVICE } from '../../apps/api/src/ground/own-database.ts'
import { startPostgres } from '../../apps/api/src/ground/postgres-process.ts'

declare module 'vitest' {
  export interface ProvidedContext {
    /** Addresses of the template database; each test database differs in its name only. */
    postgres: { ownerUrl: string; serviceUrl: string; superuserUrl: string }
  }
}

/** One Postgres for all tests of a run, its template database migrated once. Fast and unsafe: a crash loses it. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const dataFolder = await mkdtemp(path.join(tmpdir(), 'tenths-tests-'))
  const postgres = await startPostgres({ dataFolder, unsafe: true })
  const stop = async () => {
    await postgres.stop()
    await rm(dataFolder, { recursive: true, force: true })
  }
  try {
    const template = await ensureOwnDatabase(postgres.superuserUrl, dataFolder, 'template_of_tests')
    await migrate(template.ownerUrl)
    await applyGrants(template.ownerUrl, SERVICE)
    project.provide('postgres', { ...template, superuserUrl: postgres.superuserUrl('template_of_tests') })
  } catch (error) {
    await stop()
    throw error
  }
  return stop
}
