import 'fake-indexeddb/auto'
import { describe, expect, it, vi } from 'vitest'
import { noNetwork, ProblemError } from '../../api/problem.ts'
import { device, service, textOf, type Tab } from '../testing/outbox-tabs.ts'
import { typed } from '../testing/typed.ts'
import type { BenchWork } from './bench-work.ts'

const refusal = new ProblemError('length-too-fine', 422, 'Too fine.')
const expired = new ProblemError('not-signed-in', 401, '')

const texts = (tab: Tab, state: string) => tab.now.entries.filter((one) => one.state === state).map(({ content }) => textOf(content))
const keys = (tab: Tab) => tab.now.entries.map(({ key }) => key)
const add = (tab: Tab, ...names: string[]) => { for (const name of names) tab.outbox.add(`key-${name}`, typed(name)) }
const until = (look: () => unknown) => vi.waitFor(look, { timeout: 2_000, interval: 2 })

describe('the outbox', () => {
  it('keeps a value on the device before it sends it', async () => {
    let keptWhenSent: readonly string[] = []
    const to = service(async () => {
      keptWhenSent = (await shared.store().readAll()).entries.map(({ key }) => key)
      return null
    })
    const shared = device(to)
    const tab = shared.open()
    add(tab, 'a')
    await until(() => expect(tab.stored).toEqual(['a']))
    expect(keptWhenSent).toEqual(['key-a'])
    await until(async () => expect((await shared.store().readAll()).entries).toEqual([]))
  })

  it('sends values one after the other in the order they were typed', async () => {
    const to = service()
    const tab = device(to).open()
    add(tab, ...'abcdefgh')
    await until(() => expect(tab.stored).toEqual([...'abcdefgh']))
    expect(to.sent.map(({ text }) => text)).toEqual([...'abcdefgh'])
  })

  it('repeats a value with the same key until the network is back, and lets none overtake', async () => {
    const to = service((_, attempt) => (attempt <= 2 ? noNetwork() : null))
    const tab = device(to).open()
    add(tab, 'a', 'b')
    await until(() => expect(tab.now.trouble?.code).toBe('no-network'))
    await until(() => expect(tab.pauses).toEqual([1_000]))
    tab.resume()
    await until(() => expect(tab.pauses).toEqual([1_000, 2_000]))
    tab.resume()
    await until(() => expect(tab.stored).toEqual(['a', 'b']))
    expect(to.sent.map(({ key }) => key)).toEqual(['key-a', 'key-a', 'key-a', 'key-b'])
    await until(() => expect(tab.now.trouble).toBeNull())
  })

  it('waits out a fault of the server at one step without holding up another', async () => {
    const to = service((text) => (text.startsWith('a') ? new ProblemError('unexpected', 500, '') : null))
    const tab = device(to).open()
    add(tab, 'a1', 'a2')
    tab.outbox.add('key-b', typed('b', { operationKey: 'measure-rods' }))
    await until(() => expect(tab.stored).toEqual(['b']))
    expect(texts(tab, 'waiting')).toEqual(['a1', 'a2'])
    expect(to.sent.map(({ text }) => text)).not.toContain('a2')
  })

  it('keeps a refused value in sight with its reason and goes on with the next', async () => {
    const tab = device(service((text) => (text === 'a' ? refusal : null))).open()
    add(tab, 'a', 'b')
    await until(() => expect(tab.stored).toEqual(['b']))
    expect(tab.now.entries.find(({ key }) => key === 'key-a'))
      .toMatchObject({ state: 'refused', problem: { code: 'length-too-fine', message: 'Too fine.' } })
  })

  it('sends a refused value again on request, under the key it had', async () => {
    const to = service((_, attempt) => (attempt === 1 ? refusal : null))
    const tab = device(to).open()
    add(tab, 'a')
    await until(() => expect(texts(tab, 'refused')).toEqual(['a']))
    await tab.outbox.sendAgain('key-a')
    await until(() => expect(tab.stored).toEqual(['a']))
    expect(to.sent.map(({ key }) => key)).toEqual(['key-a', 'key-a'])
  })

  it('keeps what is put away on the device with the reason, until it is cleared or sent after all', async () => {
    const to = service((_, attempt) => (attempt <= 2 ? refusal : null))
    const shared = device(to)
    const tab = shared.open()
    add(tab, 'a', 'b')
    await until(() => expect(texts(tab, 'refused')).toEqual(['a', 'b']))
    await tab.outbox.putAway('key-a', 'another block')
    await tab.outbox.putAway('key-b', 'read twice')
    tab.close()
    const after = shared.open()
    await after.outbox.look()
    expect(after.now.entries).toMatchObject([
      { state: 'put-away', reason: 'another block', problem: { message: 'Too fine.' } }, { state: 'put-away', reason: 'read twice' },
    ])
    await after.outbox.sendAgain('key-b')
    await until(() => expect(after.stored).toEqual(['b']))
    await after.outbox.clear(['key-a', 'key-b'])
    await until(async () => expect((await shared.store().readAll()).entries).toEqual([]))
  })

  it('settles only what has arrived', async () => {
    const tab = device(service((text) => (text === 'a' ? refusal : null))).open()
    add(tab, 'a', 'b')
    await until(() => expect(tab.stored).toEqual(['b']))
    await until(() => expect(texts(tab, 'stored')).toEqual(['b']))
    tab.outbox.settle(['key-a', 'key-b'])
    expect(keys(tab)).toEqual(['key-a'])
  })
})

describe('work behind a step that is only marked as signed', () => {
  const tooEarly = new ProblemError('operation-not-reachable', 409, 'Waits for “Wash”.')

  it('keeps its place until that step has arrived, and holds up nothing else', async () => {
    let isThere = false
    const tab = device(service((text) => (text.startsWith('after') && !isThere ? tooEarly : null))).open()
    for (const text of ['after 1', 'after 2']) tab.outbox.add(`key-${text}`, typed(text, { operationKey: 'hone', behind: true }))
    tab.outbox.add('key-wash', {
      kind: 'signature', id: 'wash signed', personId: 'A', by: 'A', jobId: 'job-1', jobNumber: 1, operationKey: 'wash', operationTitle: 'Wash',
      behind: false, deviceAt: '2030-01-01T00:00:00Z', deviceOffset: null, definitionHash: 'h', signers: [{ id: 'A', name: 'A' }], readings: [],
    })
    await until(() => expect(tab.stored).toEqual(['wash signed']))
    await until(() => expect(tab.now.trouble?.message).toBe('Waits for “Wash”.'))
    expect(texts(tab, 'waiting')).toEqual(['after 1', 'after 2'])
    isThere = true
    await until(() => expect(tab.pauses.length).toBeGreaterThan(0))
    tab.resume()
    await until(() => expect(tab.stored).toEqual(['wash signed', 'after 1', 'after 2']))
  })

  it('is refused like anything else when it was not done behind one', async () => {
    const tab = device(service(() => tooEarly)).open()
    add(tab, 'a')
    await until(() => expect(texts(tab, 'refused')).toEqual(['a']))
  })
})

describe('a zero check', () => {
  const check = (id: string): BenchWork => ({
    kind: 'zero-check', id, personId: 'A', by: 'A', jobId: 'job-1', jobNumber: 1, operationKey: 'measure-block', operationTitle: 'Measure block',
    behind: false, deviceAt: '2030-01-01T00:00:00Z', gaugeId: 'gauge-1', gaugeMark: 'PG-1', deviation: 0, typed: '0', allowed: 2_540, passes: ['pass-1'],
  })

  it('goes out after every value its gauge read on the job, at whichever step, and before those it reads afterwards', async () => {
    let isBack = false
    const tab = device(service((text) => (text === 'before' && !isBack ? new ProblemError('unexpected', 500, '') : null))).open()
    add(tab, 'before')
    tab.outbox.add('key-check', check('check'))
    tab.outbox.add('key-after', typed('after', { operationKey: 'measure-rods' }))
    tab.outbox.add('key-other', typed('other gauge', { operationKey: 'ring-gaps', pass: { ...typed('x').pass, gaugeId: 'gauge-2' } }))
    await until(() => expect(tab.stored).toEqual(['other gauge']))
    await until(() => expect(tab.pauses.length).toBeGreaterThan(0))
    isBack = true
    tab.resume()
    await until(() => expect(tab.stored).toEqual(['other gauge', 'before', 'check', 'after']))
  })

  it('outlives a reload with all that it says', async () => {
    const shared = device(service(() => noNetwork()))
    const tab = shared.open()
    tab.outbox.add('key-check', check('check'))
    await until(() => expect(tab.now.trouble?.code).toBe('no-network'))
    tab.close()
    expect((await shared.store().readAll()).entries).toMatchObject([{ key: 'key-check', content: check('check') }])
  })
})

describe('an expired sign-in', () => {
  it('pauses until somebody signs in, and is no refusal', async () => {
    const to = service((_, attempt) => (attempt === 1 ? expired : null))
    const tab = device(to).open()
    add(tab, 'a', 'b')
    await until(() => expect(tab.pauses).toEqual([null]))
    expect(tab.now.trouble?.code).toBe('not-signed-in')
    expect(texts(tab, 'waiting')).toEqual(['a', 'b'])
    tab.resume()
    await until(() => expect(tab.stored).toEqual(['a', 'b']))
  })

  it('sends nothing in the name of the next person who signs in', async () => {
    let who = 'A'
    const to = service((_, attempt) => (attempt === 1 ? expired : null))
    const tab = device(to, () => who).open()
    add(tab, 'a')
    await until(() => expect(tab.pauses).toEqual([null]))
    who = 'B'
    tab.outbox.add('key-b', typed('b', { personId: 'B' }))
    tab.resume()
    await until(() => expect(tab.stored).toEqual(['b']))
    expect(texts(tab, 'waiting')).toEqual(['a'])
    who = 'A'
    await tab.outbox.lookAs('A')
    await until(() => expect(tab.stored).toEqual(['b', 'a']))
  })
})

describe('another tab that signs somebody else in', () => {
  it('does not get the values of the one who typed them: the service says no, and they wait for their person', async () => {
    let who = 'A'
    const to = service(() => (who === 'A' ? null : new ProblemError('other-person', 409, '')))
    const tab = device(to, () => (to.sent.length === 0 ? 'A' : who)).open()
    who = 'B'
    add(tab, 'a')
    await until(() => expect(tab.now.trouble?.code).toBe('other-person'))
    await until(() => expect(tab.pauses).toEqual([1_000]))
    tab.resume()
    expect([texts(tab, 'waiting'), texts(tab, 'refused')]).toEqual([['a'], []])
    who = 'A'
    await tab.outbox.lookAs('A')
    await until(() => expect(tab.stored).toEqual(['a']))
  })
})

describe('a reload', () => {
  it('in the middle of sending loses nothing: the same values go out in their order, under their keys', async () => {
    const to = service((text, attempt) => (text === 'b' && attempt === 2 ? new Promise<null>(() => undefined) : null))
    const shared = device(to)
    const before = shared.open()
    add(before, 'a', 'b', 'c')
    await until(() => expect(to.sent).toHaveLength(2))
    await until(async () => expect((await shared.store().readAll()).entries).toHaveLength(2))
    before.close()
    const after = shared.open()
    await after.outbox.look()
    await until(() => expect(after.stored).toEqual(['b', 'c']))
    expect(to.sent.map(({ key }) => key)).toEqual(['key-a', 'key-b', 'key-b', 'key-c'])
  })

  it('keeps refused values with their reason; a corrected one takes the place of the refused one', async () => {
    const to = service((text) => (text === 'a' ? refusal : null))
    const shared = device(to)
    const before = shared.open()
    add(before, 'a')
    await until(async () => expect((await shared.store().readAll()).entries).toMatchObject([{ state: 'refused' }]))
    before.close()
    const after = shared.open()
    await after.outbox.look()
    const [refused] = after.now.entries
    expect(refused).toMatchObject({ state: 'refused', problem: { message: 'Too fine.' } })
    after.outbox.add('key-better', typed('better'), refused)
    expect(keys(after)).toEqual(['key-better'])
    await until(() => expect(after.stored).toEqual(['better']))
    await until(async () => expect((await shared.store().readAll()).entries).toEqual([]))
  })
})

describe('two tabs', () => {
  it('send each value once, whichever typed it, and both see that it arrived', async () => {
    const to = service(() => new Promise((done) => setTimeout(() => done(null), 1)))
    const shared = device(to)
    const [one, two] = [shared.open(), shared.open()]
    const names = Array.from({ length: 20 }, (_, index) => `v${index}`)
    names.forEach((name, index) => add(index % 2 === 0 ? one : two, name))
    await until(async () => expect((await shared.store().readAll()).entries).toEqual([]))
    expect(to.sent.map(({ text }) => text).toSorted()).toEqual(names.toSorted())
    for (const tab of [one, two]) await until(() => expect(texts(tab, 'waiting')).toEqual([]))
  })

  it('both show what was refused, until it is put away and cleared in one of them', async () => {
    const shared = device(service(() => refusal))
    const [one, two] = [shared.open(), shared.open()]
    add(one, 'a')
    await until(() => expect([texts(one, 'refused'), texts(two, 'refused')]).toEqual([['a'], ['a']]))
    await two.outbox.putAway('key-a', 'no')
    await until(() => expect(texts(one, 'put-away')).toEqual(['a']))
    await two.outbox.clear(['key-a'])
    await until(() => expect([keys(one), keys(two)]).toEqual([[], []]))
  })
})

describe('a device that cannot keep more', () => {
  it('says so, sends nothing that it could not keep, and goes on in order when there is room', async () => {
    const to = service()
    const shared = device(to)
    const store = shared.store()
    let isFull = true
    const tab = shared.open({
      ...store,
      keep: (entry) => (isFull ? Promise.reject(new DOMException('', 'QuotaExceededError')) : store.keep(entry)),
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
    expect(dump).toContain('"version":3')
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
