import 'fake-indexeddb/auto'
import { describe, expect, it } from 'vitest'
import { noNetwork, ProblemError } from '../../api/problem.ts'
import { add, device, keys, refusal, service, texts, until } from '../testing/outbox-tabs.ts'
import { typed } from '../testing/typed.ts'

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

  it('takes no refusal from something on the way to the service, but for what that finds too large', async () => {
    const onTheWay: Record<string, number> = { a: 404, b: 0, c: 413 }
    const to = service((text, attempt) => (attempt <= 2 || text === 'c' ? new ProblemError('answer-unreadable', onTheWay[text] ?? 0, '') : null))
    const tab = device(to).open()
    add(tab, 'a', 'b', 'c', 'd')
    await until(() => expect(tab.pauses).toHaveLength(1))
    expect(to.sent.map(({ text }) => text)).toEqual(['a'])
    tab.resume()
    await until(() => expect(tab.pauses).toHaveLength(2))
    tab.resume()
    await until(() => expect(tab.stored).toEqual(['a', 'b', 'd']))
    expect(texts(tab, 'refused')).toEqual(['c'])
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
