import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { freePort } from '../../../apps/api/src/ground/ports.ts'
import { createTestDatabase } from '../../support/database.ts'
import { startServer, untilHealthy } from '../../support/running-server.ts'
import { untilPrinted } from './printed.ts'

/** The built program as `npm start -- --empty` runs it, before anybody has set the shop up. */
export interface EmptyShop {
  readonly address: string
  /** The one-time link that it printed. */
  readonly setupLink: string
  stop(): Promise<void>
}

export async function startEmptyShop(): Promise<EmptyShop> {
  const database = await createTestDatabase()
  const dataFolder = await mkdtemp(path.join(tmpdir(), 'tenths-empty-shop-'))
  const port = await freePort()
  const server = startServer({
    PORT: String(port), DATA_DIR: dataFolder, DATABASE_URL: database.serviceUrl, MIGRATE_DATABASE_URL: database.ownerUrl,
  }, ['--empty'])
  const stop = async () => {
    server.process.kill('SIGTERM')
    await server.ended
    await database.drop()
    await rm(dataFolder, { recursive: true, force: true })
  }
  try {
    await untilHealthy(server, port)
    const setupLink = await untilPrinted(server, /Set the shop up at\s+(\S+)/)
    return { address: `http://localhost:${port}`, setupLink, stop }
  } catch (error) {
    await stop()
    throw error
  }
}
