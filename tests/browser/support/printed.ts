import { setTimeout as wait } from 'node:timers/promises'
import type { RunningServer } from '../../support/running-server.ts'

/** What a server printed, by the first group of a pattern: it answers a moment before it prints. */
export async function untilPrinted({ said }: RunningServer, wanted: RegExp): Promise<string> {
  for (let tries = 0; tries < 100; tries += 1) {
    const found = wanted.exec(said())?.[1]
    if (found !== undefined) return found
    await wait(50)
  }
  throw new Error(`The server printed nothing like ${wanted}: ${said()}`)
}
