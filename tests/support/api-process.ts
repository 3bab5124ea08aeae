import type { AddressInfo } from 'node:net'
import { createInterface } from 'node:readline'
import { createApp } from '../../apps/api/src/app.ts'
import { createPool } from '../../apps/api/src/database/pool.ts'
import { testSecrets } from './stock.ts'

/**
 * One API process for tests that need several. It prints its port, and ends with its standard input. DATABASE_URL says
 * where the shop lies, NAME how it is called in pg_stat_activity. The line `die after commit` on its standard input
 * makes it kill itself between the commit of its next command and the answer.
 */
const { DATABASE_URL, NAME } = process.env
if (DATABASE_URL === undefined || NAME === undefined) throw new Error('DATABASE_URL and NAME are needed.')
const pool = createPool(DATABASE_URL, { name: NAME, connections: 30 })
const app = await createApp({ pool, secrets: testSecrets, logLevel: 'silent' })
await app.listen({ host: '127.0.0.1', port: 0 })
process.stdout.write(`${(app.server.address() as AddressInfo).port}\n`)
for await (const line of createInterface({ input: process.stdin })) {
  if (line !== 'die after commit') throw new Error(`Nothing is done at ${line}.`)
  // The announcement is the first thing that follows a commit; only the process that won announces.
  app.shop.announcer.announce = () => void process.kill(process.pid, 'SIGKILL')
  process.stdout.write('will die\n')
}
await app.close()
await pool.end()
