import 'fake-indexeddb/auto'
import { describe, expect, it } from 'vitest'
import { add, device, keys, refusal, service, texts, until } from '../testing/outbox-tabs.ts'
import { typed } from '../testing/typed.ts'

describe('a reload', () => {
  it('in the middle of sending loses nothing: the same values go out in their order, under their keys', async () => {
    const to = service((text, attempt) => (text === 'b' && attempt === 2 ? new Promise<null>(() => undefined) : null))
    const shared = device(to)
    const before = shared.open()
    add(before, 'a', 'b', 'c')
    await until(() => expect(to.sent).toHaveLength(2))
    await until(async () => expect((await shared.store().readAll()).entries).toHaveLength(3))
    before.close()
    const after = shared.open()
    await after.outbox.look()
    // The service had the first one: under its key it has no second effect.
    await until(() => expect(after.stored).toEqual(['a', 'b', 'c']))
    expect(to.sent.map(({ key }) => key)).toEqual(['key-a', 'key-b', 'key-a', 'key-b', 'key-c'])
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

describe('whoever goes on measuring', () => {
  it('keeps the turn to send, for another tab too; the device lets go of what has arrived, together, once there is a rest', async () => {
    const rests: (() => void)[] = []
    const shared = device(service())
    const [one, two] = [shared.open({ rest: () => new Promise((done) => { rests.push(done) }) }), shared.open()]
    add(one, 'a')
    await until(() => expect(one.stored).toEqual(['a']))
    add(one, 'b')
    await until(() => expect(one.stored).toEqual(['a', 'b']))
    add(two, 'c')
    await until(() => expect(one.stored).toEqual(['a', 'b', 'c']))
    // The answer shows it by now: looking at the device does not bring it back.
    one.outbox.settle(['key-a'])
    await one.outbox.look()
    expect([texts(one, 'stored'), one.letGo, two.stored]).toEqual([['b', 'c'], [], []])
    await until(() => {
      for (const end of rests) end()
      expect(one.letGo).toEqual(['a', 'b', 'c'])
    })
    await until(async () => expect((await shared.store().readAll()).entries).toEqual([]))
    await until(() => expect(texts(two, 'waiting')).toEqual([]))
    expect(two.stored).toEqual([])
  })
})
