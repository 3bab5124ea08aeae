import { readConfiguration } from '../configuration.ts'
import { createPool } from '../database/pool.ts'
import { Refusal } from '../refusal.ts'
import { openRecords } from './records.ts'
import { reportLines, verifyShop } from './verify-shop.ts'

/**
 * `npm run verify`: checks all seals and verdicts, prints what it finds, and ends with 1 when anything does
 * not hold.
 */
async function verify(): Promise<number> {
  const records = await openRecords(readConfiguration(process.env, process.argv.slice(2)))
  try {
    const pool = createPool(records.url, { connections: 2, name: 'tenths verify' })
    try {
      let jobs = 0
      let unsound = 0
      for await (const report of verifyShop(pool)) {
        jobs += 1
        if (report.faults.length > 0) unsound += 1
        process.stdout.write(`${reportLines(report).join('\n')}\n`)
      }
      process.stdout.write(`${jobs} jobs checked, ${unsound} not sound.\n`)
      return unsound === 0 ? 0 : 1
    } finally {
      await pool.end()
    }
  } finally {
    await records.close()
  }
}

try {
  process.exitCode = await verify()
} catch (error) {
  if (error instanceof Refusal) process.stderr.write(`${error.message}\n`)
  else console.error(error)
  process.exitCode = 2
}
