import { openDB, type DBSchema, type IDBPDatabase, type IDBPTransaction } from 'idb'
import { plainWork, type BenchWork } from './bench-work.ts'
import type { KeptEntry, OutboxStore } from './outbox-entry.ts'
import { upgraded, type Versioned } from './versions.ts'

/** Version of what a kept entry holds. What a newer program keeps is left where it is, counted and said. */
const entryVersion = 4

type KeptWork = Omit<KeptEntry<BenchWork>, 'sequence'> & { readonly version: number; readonly sequence?: number }

interface Shelves extends DBSchema {
  work: { key: number; value: KeptWork }
}

/** The bench's work on this device in IndexedDB, numbered in the order in which it was done. Made once per page. */
export function openWorkStore(name = 'tenths-outbox'): OutboxStore<BenchWork> {
  let opened: Promise<IDBPDatabase<Shelves>> | null = null
  const forget = () => { opened = null }

  function database(): Promise<IDBPDatabase<Shelves>> {
    opened ??= openDB<Shelves>(name, 2, {
      upgrade: (made, before, _now, transaction) => makeShelf(made, before, transaction),
      // A newer version of the program in another tab may go ahead: this page opens it again when it needs it.
      blocking: (_current, _wanted, event) => { forget(); (event.target as IDBDatabase).close() },
      terminated: forget,
    }).catch((error: unknown) => { forget(); throw error })
    return opened
  }

  async function write<T>(work: (shelf: Awaited<ReturnType<typeof begin>>['store']) => Promise<T>): Promise<T> {
    const transaction = await begin()
    const [done] = await Promise.all([work(transaction.store), transaction.done])
    return done
  }

  // Strict: what was accepted outlives a battery that falls out.
  async function begin() {
    return (await database()).transaction('work', 'readwrite', { durability: 'strict' })
  }

  return {
    async readAll() {
      const kept = await (await database()).getAll('work')
      const all = kept.map((entry) => upgraded(entry as unknown as Versioned, entryVersion) as unknown as KeptWork)
      const readable = all.filter(({ version }) => version === entryVersion)
      return {
        entries: readable.map(({ sequence = 0, key, content, state, problem, reason }) =>
          ({ sequence, key, content: plainWork(content), state, problem, reason })),
        unreadable: all.length - readable.length,
      }
    },
    keep: ({ key, content, insteadOf }) => write(async (shelf) => {
      if (insteadOf !== null && insteadOf.sequence !== null) await shelf.delete(insteadOf.sequence)
      return shelf.add({ version: entryVersion, key, content: plainWork(content), state: 'waiting', problem: null, reason: null })
    }),
    change: ({ sequence, key, content, state, problem, reason }) => write(async (shelf) => {
      await shelf.put({ sequence, version: entryVersion, key, content: plainWork(content), state, problem, reason })
    }),
    remove: (sequences) => write(async (shelf) => {
      await Promise.all(sequences.map((sequence) => shelf.delete(sequence)))
    }),
  }
}

/** Makes the shelf; what an older program kept on its own moves over, in its order and under its keys. */
async function makeShelf(
  made: IDBPDatabase<Shelves>, before: number, transaction: IDBPTransaction<Shelves, 'work'[], 'versionchange'>,
): Promise<void> {
  made.createObjectStore('work', { keyPath: 'sequence', autoIncrement: true })
  if (before < 1) return
  const old = (transaction as unknown as IDBPTransaction<never, never, 'versionchange'>).objectStore('readings' as never)
  for (const entry of await old.getAll() as unknown as Versioned[]) {
    await transaction.objectStore('work').put(upgraded(entry, entryVersion) as unknown as KeptWork)
  }
  (made as unknown as IDBPDatabase).deleteObjectStore('readings')
}
