import 'fake-indexeddb/auto'
import { describe, expect, it } from 'vitest'
import { ProblemError } from '../../api/problem.ts'
import { add, device, service, texts, until } from '../testing/outbox-tabs.ts'
import { typed } from '../testing/typed.ts'

const expired = new ProblemError('not-signed-in', 401, '')

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

describe('the next person', () => {
  it('is not told to sign in again because of what the one before left: that waits for its own person', async () => {
    let who = 'A'
    const tab = device(service(() => (who === 'A' ? expired : null)), () => who).open()
    add(tab, 'a')
    await until(() => expect(tab.now.trouble?.code).toBe('not-signed-in'))
    who = 'B'
    const looked = tab.outbox.lookAs('B')
    tab.resume()
    await looked
    await until(() => expect(tab.now.trouble).toBeNull())
    expect(texts(tab, 'waiting')).toEqual(['a'])
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
