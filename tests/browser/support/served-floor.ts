import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { freePort } from '../../../apps/api/src/ground/ports.ts'
import { startFloor, type Floor } from '../../support/floor.ts'
import { startServer, untilHealthy, type RunningServer } from '../../support/running-server.ts'
import { testSecrets } from '../../support/stock.ts'

/**
 * A test shop whose pages come from a process of their own, which can be killed and started again at one address: while it
 * is gone, the tablets have no network. What others do meanwhile goes through the shop's own API.
 */
export interface ServedFloor {
  readonly shop: Floor
  readonly address: string
  /** Starts it, of the program in another folder where one is given. */
  serve(folder?: string): Promise<void>
  /** Ends it at once, as a power cut does. */
  kill(): Promise<void>
  stop(): Promise<void>
}

export async function startServedFloor(): Promise<ServedFloor> {
  const shop = await startFloor()
  const dataFolder = await mkdtemp(path.join(tmpdir(), 'tenths-served-'))
  await mkdir(path.join(dataFolder, 'secrets'), { mode: 0o700 })
  await writeFile(path.join(dataFolder, 'secrets/pin-pepper'), testSecrets.pinPepper)
  await writeFile(path.join(dataFolder, 'secrets/status-link-key'), testSecrets.statusLinkKey)
  const port = await freePort()
  let server: RunningServer | undefined

  async function serve(folder?: string): Promise<void> {
    server = startServer({
      PORT: String(port), DATA_DIR: dataFolder, DATABASE_URL: shop.database.serviceUrl, MIGRATE_DATABASE_URL: shop.database.ownerUrl,
    }, [], folder)
    await untilHealthy(server, port)
  }

  async function end(signal: NodeJS.Signals): Promise<void> {
    server?.process.kill(signal)
    await server?.ended
    server = undefined
  }

  const floor: ServedFloor = {
    shop, address: `http://localhost:${port}`, serve,
    kill: () => end('SIGKILL'),
    async stop() {
      await end('SIGTERM')
      await shop.stop()
      await rm(dataFolder, { recursive: true, force: true })
    },
  }
  try {
    await serve()
    return floor
  } catch (error) {
    await floor.stop()
    throw error
  }
}
