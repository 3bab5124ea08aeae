import 'fake-indexeddb/auto'
import { describe, expect, it } from 'vitest'
import { noNetwork } from '../../api/problem.ts'
import { add, device, service, texts, until } from '../testing/outbox-tabs.ts'
import { typed } from '../testing/typed.ts'

describe('a device that cannot keep more', () => {
  it('says so, sends nothing that it could not keep, and goes on in order when there is room', async () => {
    const to = service()
    const shared = device(to)
    const store = shared.store()
    let isFull = true
    const tab = shared.open({
      store: { ...store, keep: (entry) => (isFull ? Promise.reject(new DOMException('', 'QuotaExceededError')) : store.keep(entry)) },
    })
    add(tab, 'a', 'b')
    await until(() => expect(tab.now.canKeep).toBe(false))
    await until(() => expect(tab.pauses).toHaveLength(1))
    await tab.outbox.look()
    expect([to.sent, texts(tab, 'waiting'), tab.now.canKeep]).toEqual([[], ['a', 'b'], false])
    isFull = false
    tab.resume()
    await until(() => expect(tab.stored).toEqual(['a', 'b']))
    expect(tab.now.canKeep).toBe(true)
  })
})

describe('what lies on the device', () => {
  it('is the reading and its context with a version and its place in the order, and never a PIN that a page held', async () => {
    const shared = device(service(noNetwork))
    const tab = shared.open()
    const careless = typed('a')
    tab.outbox.add('key-a', { ...careless, pin: '918273', reading: { ...careless.reading, pin: '918273' } } as typeof careless)
    add(tab, 'b')
    await until(async () => expect((await shared.store().readAll()).entries).toMatchObject([{ sequence: 1 }, { sequence: 2 }]))
    const dump = JSON.stringify(await everythingKept())
    expect(dump).toContain('reading-a')
    expect(dump).toContain('"version":4')
    expect(dump).not.toContain('918273')
  })
})

describe('a new version of the program', () => {
  it('takes over what the one before kept, in its order and under its keys', async () => {
    const to = service()
    const shared = device(to)
    const { kind: _, behind: __, cellTitle: ___, ...before } = typed('a')
    await keepAsBefore(shared.name, [
      { version: 1, key: 'key-a', content: before, state: 'waiting', problem: null },
      { version: 1, key: 'key-b', content: { ...before, reading: { ...before.reading, typed: 'b' } }, state: 'refused', problem: refusalAsKept },
    ])
    const tab = shared.open()
    add(tab, 'c')
    await until(() => expect(tab.stored).toEqual(['a', 'c']))
    expect(to.sent.map(({ key }) => key)).toEqual(['key-a', 'key-c'])
    expect(tab.now.entries.find(({ key }) => key === 'key-b')).toMatchObject({ state: 'refused', content: { kind: 'reading' } })
  })

  it('of which this page knows nothing yet leaves its entries where they are, and says how many', async () => {
    const shared = device(service())
    await shared.store().readAll()
    const database = await opened(shared.name)
    database.transaction('work', 'readwrite').objectStore('work').add({ version: 99, key: 'key-x', content: {} })
    database.close()
    const tab = shared.open()
    await tab.outbox.look()
    expect([tab.now.unreadable, tab.now.entries]).toEqual([1, []])
    expect(JSON.stringify(await everythingKept())).toContain('key-x')
  })
})

const refusalAsKept = { code: 'length-too-fine', status: 422, message: 'Too fine.' }

function opened(name: string, version?: number, upgrade: (database: IDBDatabase) => void = () => undefined): Promise<IDBDatabase> {
  return new Promise((done) => {
    const opening = indexedDB.open(name, version)
    opening.onupgradeneeded = () => upgrade(opening.result)
    opening.onsuccess = () => done(opening.result)
  })
}

/** The shelf as version 1 of the program made it. */
async function keepAsBefore(name: string, entries: readonly object[]): Promise<void> {
  const database = await opened(name, 1, (made) => { made.createObjectStore('readings', { keyPath: 'sequence', autoIncrement: true }) })
  const transaction = database.transaction('readings', 'readwrite')
  for (const entry of entries) transaction.objectStore('readings').add(entry)
  await new Promise((done) => { transaction.oncomplete = done })
  database.close()
}

/** Every record of every database of this device. */
async function everythingKept(): Promise<unknown[]> {
  const found: unknown[] = []
  for (const { name = '' } of await indexedDB.databases()) {
    const database = await opened(name)
    for (const store of database.objectStoreNames) {
      const reading = database.transaction(store).objectStore(store).getAll()
      found.push(...await new Promise<unknown[]>((done) => { reading.onsuccess = () => done(reading.result) }))
    }
    database.close()
  }
  return found
}
