import 'fake-indexeddb/auto'
import { describe, expect, it, vi } from 'vitest'
import { noNetwork, ProblemError } from '../../api/problem.ts'
import { device, service, type Tab } from '../testing/outbox-tabs.ts'
import { typed } from '../testing/typed.ts'

const refusal = new ProblemError('length-too-fine', 422, 'Too fine.')
const expired = new ProblemError('not-signed-in', 401, '')

const texts = (tab: Tab, state: string) => tab.now.entries.filter((one) => one.state === state).map(({ content }) => content.reading.typed)
const keys = (tab: Tab) => tab.now.entries.map(({ key }) => key)
const add = (tab: Tab, ...names: string[]) => { for (const name of names) tab.outbox.add(`key-${name}`, typed(name)) }
const until = (look: () => unknown) => vi.waitFor(look, { timeout: 2_000, interval: 2 })

describe('the outbox', () => {
  it('keeps a value on the device before it sends it', async () => {
    let keptWhenSent: readonly string[] = []
    const to = service(async () => {
      keptWhenSent = (await shared.store().readAll()).map(({ key }) => key)
      return null
    })
    const shared = device(to)
    const tab = shared.open()
    add(tab, 'a')
    await until(() => expect(tab.stored).toEqual(['a']))
    expect(keptWhenSent).toEqual(['key-a'])
    await until(async () => expect(await shared.store().readAll()).toEqual([]))
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

  it('drops nothing but what a person drops', async () => {
    const shared = device(service(() => refusal))
    const tab = shared.open()
    add(tab, 'a', 'b')
    await until(() => expect(texts(tab, 'refused')).toEqual(['a', 'b']))
    await tab.outbox.drop(['key-a'])
    expect(keys(tab)).toEqual(['key-b'])
    expect((await shared.store().readAll()).map(({ key }) => key)).toEqual(['key-b'])
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
    await until(async () => expect(await shared.store().readAll()).toHaveLength(2))
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
    await until(async () => expect(await shared.store().readAll()).toMatchObject([{ state: 'refused' }]))
    before.close()
    const after = shared.open()
    await after.outbox.look()
    const [refused] = after.now.entries
    expect(refused).toMatchObject({ state: 'refused', problem: { message: 'Too fine.' } })
    after.outbox.add('key-better', typed('better'), refused)
    expect(keys(after)).toEqual(['key-better'])
    await until(() => expect(after.stored).toEqual(['better']))
    await until(async () => expect(await shared.store().readAll()).toEqual([]))
  })
})

describe('two tabs', () => {
  it('send each value once, whichever typed it, and both see that it arrived', async () => {
    const to = service(() => new Promise((done) => setTimeout(() => done(null), 1)))
    const shared = device(to)
    const [one, two] = [shared.open(), shared.open()]
    const names = Array.from({ length: 20 }, (_, index) => `v${index}`)
    names.forEach((name, index) => add(index % 2 === 0 ? one : two, name))
    await until(async () => expect(await shared.store().readAll()).toEqual([]))
    expect(to.sent.map(({ text }) => text).toSorted()).toEqual(names.toSorted())
    for (const tab of [one, two]) await until(() => expect(texts(tab, 'waiting')).toEqual([]))
  })

  it('both show what was refused, until it is dropped in one of them', async () => {
    const shared = device(service(() => refusal))
    const [one, two] = [shared.open(), shared.open()]
    add(one, 'a')
    await until(() => expect([texts(one, 'refused'), texts(two, 'refused')]).toEqual([['a'], ['a']]))
    await two.outbox.drop(['key-a'])
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
    await until(async () => expect(await shared.store().readAll()).toMatchObject([{ sequence: 1 }, { sequence: 2 }]))
    const dump = JSON.stringify(await everythingKept())
    expect(dump).toContain('reading-a')
    expect(dump).toContain('"version":1')
    expect(dump).not.toContain('918273')
  })
})

/** Every record of every database of this device. */
async function everythingKept(): Promise<unknown[]> {
  const found: unknown[] = []
  for (const { name = '' } of await indexedDB.databases()) {
    const database = await new Promise<IDBDatabase>((done) => {
      const opening = indexedDB.open(name)
      opening.onsuccess = () => done(opening.result)
    })
    for (const store of database.objectStoreNames) {
      const reading = database.transaction(store).objectStore(store).getAll()
      found.push(...await new Promise<unknown[]>((done) => { reading.onsuccess = () => done(reading.result) }))
    }
    database.close()
  }
  return found
}
