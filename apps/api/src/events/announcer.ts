import type pg from 'pg'
import { lazyConnection } from './lazy-connection.ts'

/** Tells every process of this shop that there is something new to look at. It may be called as often as one likes. */
export interface Announcer {
  announce(): void
  close(): Promise<void>
}

/** Channel of a shop's announcements: a database may hold many shops, each in its own schema. */
export const channelOf = (schema: string): string => `tenths-events-${schema}`

/**
 * Announces after commits, on a connection of its own, many commits at once: a NOTIFY inside each transaction would
 * make commits wait for each other. What is not announced (a killed process, a lost connection) is found by the look
 * that every process takes each second, so a failure here is not an error.
 */
export function openAnnouncer(pool: pg.Pool, schema: string): Announcer {
  const connection = lazyConnection(pool.options)
  let isWanted = false
  let sending: Promise<void> | null = null

  async function sendWhileWanted(): Promise<void> {
    while (isWanted) {
      isWanted = false
      try {
        await (await connection.get()).query('SELECT pg_notify($1, $2)', [channelOf(schema), ''])
      } catch {
        await connection.drop()
      }
    }
    sending = null
  }

  return {
    announce() {
      isWanted = true
      sending ??= sendWhileWanted()
    },
    async close() {
      await sending
      await connection.drop()
    },
  }
}
