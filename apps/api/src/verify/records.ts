import { existsSync } from 'node:fs'
import path from 'node:path'
import type { Configuration } from '../configuration.ts'
import { lockFolder } from '../ground/folder-lock.ts'
import { ensureOwnDatabase } from '../ground/own-database.ts'
import { startPostgres } from '../ground/postgres-process.ts'
import { livingPostmaster } from '../ground/postmaster-file.ts'
import { Refusal } from '../refusal.ts'

/** Where the records are, and what to do when one is done with them. */
export interface OpenRecords {
  readonly url: string
  readonly close: () => Promise<void>
}

/**
 * Opens the shop's records: the database that DATABASE_URL names, or the program's own, which is started for
 * this when it is not running, and stopped again.
 * @throws Refusal when there are none
 */
export async function openRecords({ databaseUrl, dataFolder }: Configuration): Promise<OpenRecords> {
  if (databaseUrl !== undefined) return { url: databaseUrl, close: async () => undefined }
  const cluster = path.join(dataFolder, 'postgres')
  if (!existsSync(path.join(cluster, 'PG_VERSION'))) {
    throw new Refusal(
      `There are no records in ${dataFolder}: set DATA_DIR or DATABASE_URL to where they are.`,
    )
  }
  // While the shop is open its own Postgres answers; the folder is then its, and nothing is started or
  // stopped here.
  const isRunning = (await livingPostmaster(cluster)) !== undefined
  const unlock = isRunning ? async () => undefined : await lockFolder(dataFolder)
  try {
    const postgres = await startPostgres({ dataFolder })
    const stop = async () => {
      if (!postgres.adopted) await postgres.stop()
      await unlock()
    }
    try {
      return { url: (await ensureOwnDatabase(postgres.superuserUrl, dataFolder)).serviceUrl, close: stop }
    } catch (error) {
      await stop()
      throw error
    }
  } catch (error) {
    await unlock()
    throw error
  }
}
