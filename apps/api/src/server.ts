import { readFile } from 'node:fs/promises'
import { createApp } from './app.ts'
import { readConfiguration, type Configuration } from './configuration.ts'
import { createPool } from './database/pool.ts'
import { openDatabase } from './ground/open-database.ts'
import { prepareShop } from './ground/first-start.ts'
import { loadPages } from './ground/pages.ts'
import { freePort, isFree } from './ground/ports.ts'
import { secret } from './ground/secrets.ts'
import { stopOnSignals } from './ground/stopping.ts'
import { Refusal } from './refusal.ts'

/** Starts everything in order; what was started is put on `stopping` at once, so that a failure leaves nothing behind. */
async function serve(): Promise<void> {
  const configuration = readConfiguration(process.env, process.argv.slice(2))
  const { dataFolder, host, logLevel, origin } = configuration
  const port = await portOf(configuration)
  const stopping = stopOnSignals()
  try {
    const database = await openDatabase(configuration, (reason) => stopping.fail(`Postgres ended by itself (${reason}).`))
    stopping.add(database.close, 60_000)
    const pool = createPool(database.serviceUrl, { connections: configuration.databaseConnections })
    stopping.add(() => pool.end())
    const secrets = {
      pinPepper: await secret(dataFolder, 'pin-pepper'),
      statusLinkKey: await secret(dataFolder, 'status-link-key'),
    }
    const tls = await readCertificate(configuration.tls)
    const pages = await loadPages({ origin, overTls: tls !== undefined })
    const app = await createApp({ pool, secrets, origin, tls, logLevel, pages })
    stopping.add(() => app.close())
    const about = await prepareShop({ app, dataFolder, empty: configuration.empty, say: (line) => process.stdout.write(`${line}\n`) })
    await app.listen({ host, port })
    const address = origin ?? `${tls ? 'https' : 'http'}://${host === '127.0.0.1' ? 'localhost' : host}:${port}`
    const lines = [`Tenths answers at   ${address}`, ...about.map((line) => line.replace('{address}', address)), `The data lies in    ${dataFolder}`]
    process.stdout.write(`\n${lines.join('\n')}\n`)
  } catch (error) {
    const interrupted = stopping.isStopping()
    await stopping.stop()
    if (!interrupted) throw error
  }
}

/** Looked at before anything is started or changed. */
async function portOf({ host, port }: Configuration): Promise<number> {
  if (port === 0) return freePort()
  if (await isFree(port, host)) return port
  throw new Refusal(`Port ${port} is taken, perhaps by Tenths already running: stop that program, or set PORT to another number.`)
}

async function readCertificate(files: Configuration['tls']): Promise<{ cert: Buffer; key: Buffer } | undefined> {
  if (files === undefined) return undefined
  const read = (name: string, file: string) =>
    readFile(file).catch((error: Error) => {
      throw new Refusal(`${name} cannot be read (${error.message}): correct it, or unset both TLS_CERT and TLS_KEY.`)
    })
  return { cert: await read('TLS_CERT', files.certificateFile), key: await read('TLS_KEY', files.keyFile) }
}

try {
  await serve()
} catch (error) {
  if (error instanceof Refusal) process.stderr.write(`${error.message}\n`)
  else console.error(error)
  process.exit(1)
}
