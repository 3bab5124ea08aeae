import { openDB, type DBSchema, type IDBPDatabase } from 'idb'
import type { KeptEntry, OutboxStore } from './outbox-entry.ts'
import { plainReading, type TypedReading } from './typed-reading.ts'

/** Version of what a kept entry holds. Another version of the program leaves entries it cannot read where they are. */
const entryVersion = 1

interface KeptReading extends Omit<KeptEntry<TypedReading>, 'sequence'> {
  readonly version: number
}

interface Shelves extends DBSchema {
  readings: { key: number; value: KeptReading & { sequence?: number } }
}

/** Readings on this device in IndexedDB, numbered in the order of typing. Made once per page. */
export function openWorkStore(name = 'tenths-outbox'): OutboxStore<TypedReading> {
  let opened: Promise<IDBPDatabase<Shelves>> | null = null
  const forget = () => { opened = null }

  function database(): Promise<IDBPDatabase<Shelves>> {
    opened ??= openDB<Shelves>(name, 1, {
      upgrade: (made) => void made.createObjectStore('readings', { keyPath: 'sequence', autoIncrement: true }),
      // A newer version of the program in another tab may go ahead: this page opens it again when it needs it.
      blocking: (_current, _wanted, event) => { forget(); (event.target as IDBDatabase).close() },
      terminated: forget,
    }).catch((error: unknown) => { forget(); throw error })
    return opened
  }

  async function write<T>(work: (readings: Awaited<ReturnType<typeof begin>>['store']) => Promise<T>): Promise<T> {
    const transaction = await begin()
    const [done] = await Promise.all([work(transaction.store), transaction.done])
    return done
  }

  // Strict: what was accepted outlives a battery that falls out.
  async function begin() {
    return (await database()).transaction('readings', 'readwrite', { durability: 'strict' })
  }

  return {
    async readAll() {
      const all = await (await database()).getAll('readings')
      return all.filter(({ version }) => version === entryVersion)
        .map(({ sequence = 0, key, content, state, problem }) => ({ sequence, key, content, state, problem }))
    },
    keep: ({ key, content, insteadOf }) => write(async (readings) => {
      if (insteadOf !== null && insteadOf.sequence !== null) await readings.delete(insteadOf.sequence)
      return readings.add({ version: entryVersion, key, content: plainReading(content), state: 'waiting', problem: null })
    }),
    change: ({ sequence, key, content, state, problem }) => write(async (readings) => {
      await readings.put({ sequence, version: entryVersion, key, content: plainReading(content), state, problem })
    }),
    remove: (sequences) => write(async (readings) => {
      await Promise.all(sequences.map((sequence) => readings.delete(sequence)))
    }),
  }
}
