import { openDB, type DBSchema, type IDBPDatabase } from 'idb'

/** Version of the shape of answers: those of another are not shown. */
const answerVersion = 2
/** Opened pages that are kept; the one looked at longest ago makes room. */
const most = 120

interface KeptAnswer {
  readonly address: string
  readonly version: number
  /** When it was read, by the device's clock. */
  readonly readAt: number
  readonly answer: unknown
}

interface Shelf extends DBSchema {
  answers: { key: string; value: KeptAnswer; indexes: { readAt: number } }
}

let opened: Promise<IDBPDatabase<Shelf>> | null = null
const forget = () => { opened = null }

function database(): Promise<IDBPDatabase<Shelf>> {
  opened ??= openDB<Shelf>('tenths-kept', 1, {
    upgrade: (made) => {
      made.createObjectStore('answers', { keyPath: 'address' }).createIndex('readAt', 'readAt')
    },
    blocking: (_current, _wanted, event) => { forget(); (event.target as IDBDatabase).close() },
    terminated: forget,
  }).catch((error: unknown) => { forget(); throw error })
  return opened
}

/** Keeps what an address answered last. A device that cannot keep it works on while the network is there. */
export async function keepAnswer(address: string, answer: unknown): Promise<void> {
  try {
    const shelf = (await database()).transaction('answers', 'readwrite')
    await shelf.store.put({ address, version: answerVersion, readAt: Date.now(), answer })
    const surplus = await shelf.store.count() - most
    let oldest = surplus > 0 ? await shelf.store.index('readAt').openCursor() : null
    for (let removed = 0; oldest !== null && removed < surplus; removed += 1) {
      await oldest.delete()
      oldest = await oldest.continue()
    }
    await shelf.done
  } catch {
    // The outbox says when the device is full; nothing that was done is lost by this.
  }
}

/** What an address answered when it was last reached; undefined when that is not kept. */
export async function keptAnswer(address: string): Promise<unknown> {
  const kept = await database().then((shelf) => shelf.get('answers', address)).catch(() => undefined)
  return kept?.version === answerVersion ? kept.answer : undefined
}

/** What each address that begins so answered when it was last reached, the one read last first. */
export async function keptUnder(beginning: string): Promise<readonly unknown[]> {
  const range = IDBKeyRange.bound(beginning, `${beginning}\uffff`)
  const kept = await database().then((shelf) => shelf.getAll('answers', range)).catch(() => [])
  return kept.filter(({ version }) => version === answerVersion)
    .sort((one, other) => other.readAt - one.readAt)
    .map(({ answer }) => answer)
}

/** When an address was read last, by the device's clock; null when nothing is kept of it. */
export async function readLast(address: string): Promise<number | null> {
  const kept = await database().then((shelf) => shelf.get('answers', address)).catch(() => undefined)
  return kept?.version === answerVersion ? kept.readAt : null
}

/** Changes each kept answer whose address begins so; one that the change leaves as it is is not written. */
export async function changeKept(beginning: string, change: (answer: unknown) => unknown): Promise<void> {
  try {
    const shelf = (await database()).transaction('answers', 'readwrite')
    const range = IDBKeyRange.bound(beginning, `${beginning}\uffff`)
    for (const kept of await shelf.store.getAll(range)) {
      const answer = kept.version === answerVersion ? change(kept.answer) : kept.answer
      if (answer !== kept.answer) await shelf.store.put({ ...kept, answer })
    }
    await shelf.done
  } catch {
    // As above: at worst a page opened without a network shows a little less than has arrived.
  }
}

/** Clears all that is kept: somebody else signs in, or nobody is signed in any more. */
export async function clearKept(): Promise<void> {
  await database().then((shelf) => shelf.clear('answers')).catch(() => undefined)
}
