import { mkdir } from 'node:fs/promises'
import type { Configuration } from '../configuration.ts'
import { applyGrants } from '../database/grants.ts'
import { migrate } from '../database/migrate.ts'
import { Refusal } from '../refusal.ts'
import { lockFolder } from './folder-lock.ts'
import { openGivenDatabase } from './given-database.ts'
import { ensureOwnDatabase, type DatabaseUrls } from './own-database.ts'
import { startPostgres } from './postgres-process.ts'

export type OpenDatabase = DatabaseUrls & {
  /** Ends what was started for it; nothing when the database is not ours. */
  readonly close: () => Promise<void>
}

/**
 * A database at this version's schema with both logins: the program's own, or the one DATABASE_URL names.
 * Throws a {@link Refusal} when there is none to be had, and leaves nothing running then.
 */
export async function openDatabase(
  configuration: Configuration,
  onUnexpectedEnd: (reason: string) => void,
): Promise<OpenDatabase> {
  const { dataFolder, databaseUrl } = configuration
  await makeFolder(dataFolder)
  const database = databaseUrl
    ? { ...(await openGivenDatabase(databaseUrl, configuration)), close: async () => undefined }
    : await openOwnDatabase(dataFolder, onUnexpectedEnd)
  try {
    await migrate(database.ownerUrl)
    await applyGrants(database.ownerUrl, decodeURIComponent(new URL(database.serviceUrl).username))
    return database
  } catch (error) {
    await database.close()
    throw error
  }
}

async function openOwnDatabase(dataFolder: string, onUnexpectedEnd: (reason: string) => void): Promise<OpenDatabase> {
  const unlock = await lockFolder(dataFolder)
  let stop = async () => undefined as void
  try {
    const postgres = await startPostgres({ dataFolder, onUnexpectedEnd })
    stop = postgres.stop
    return {
      ...(await ensureOwnDatabase(postgres.superuserUrl, dataFolder)),
      close: async () => {
        await stop()
        await unlock()
      },
    }
  } catch (error) {
    await stop()
    await unlock()
    throw error
  }
}

async function makeFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder, { recursive: true, mode: 0o700 })
  } catch (error) {
    throw new Refusal(`The data folder ${folder} cannot be made (${(error as Error).message}): set DATA_DIR to another.`)
  }
}
