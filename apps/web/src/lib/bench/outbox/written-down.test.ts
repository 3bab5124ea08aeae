import 'fake-indexeddb/auto'
import { describe, expect, it } from 'vitest'
import { noNetwork, ProblemError } from '../../api/problem.ts'
import { device, service, texts, until } from '../testing/outbox-tabs.ts'
import { found, photographed, testResult, typedLot } from '../testing/written-down.ts'
import { sayWork, showsAtOnce } from './bench-work.ts'
import { refusedAt } from './refused-at.ts'

describe('results of tests, lots, findings and photographs', () => {
  it('outlive the page, go out in the order in which they were done, each once, a photograph with its bytes', async () => {
    let isAway = true
    const to = service(() => (isAway ? noNetwork() : null))
    const shared = device(to)
    const first = shared.open()
    const careless = { ...testResult('result'), pin: '918273' }
    for (const work of [found('finding'), photographed('photograph', 'finding'), careless, typedLot('lot')]) {
      first.outbox.add(`key-${work.id}`, work)
    }
    await until(async () => expect((await shared.store().readAll()).entries).toHaveLength(4))
    const { entries } = await shared.store().readAll()
    expect(entries.map(({ content }) => content)).toEqual([found('finding'), photographed('photograph', 'finding'), testResult('result'), typedLot('lot')])
    const picture = entries.flatMap(({ content }) => (content.kind === 'photograph' ? [content.picture] : []))
    expect(await picture[0]?.text()).toBe('picture')

    first.close()
    isAway = false
    to.sent.splice(0)
    const second = shared.open()
    await second.outbox.look()
    await until(() => expect(second.stored).toEqual(['finding', 'photograph', 'result', 'lot']))
    expect(to.sent.map(({ text, key }) => [text, key])).toEqual(['finding', 'photograph', 'result', 'lot'].map((id) => [id, `key-${id}`]))
    expect((await shared.store().readAll()).entries).toEqual([])
  })

  it('stay with their words when they are refused, until they are said anew', async () => {
    const another = new ProblemError('body-invalid', 400, '', { reason: 'Say why another one is right.' })
    const to = service((text) => (text === 'lot' ? another : null))
    const tab = device(to).open()
    tab.outbox.add('key-lot', typedLot('lot'))
    await until(() => expect(texts(tab, 'refused')).toEqual(['lot']))
    const refused = refusedAt(tab.now.entries, 'lot', ({ partId }) => partId === 'piston-A')
    expect([refused?.content.lot, refused?.problem?.message]).toEqual(['4711', 'Say why another one is right.'])
    expect(refusedAt(tab.now.entries, 'inspection', () => true)).toBe(null)
    tab.outbox.add('key-again', typedLot('again', { reason: 'The box said so' }), refused)
    await until(() => expect(tab.stored).toEqual(['again']))
    expect(texts(tab, 'refused')).toEqual([])
  })

  it('show as done once the device has kept them', () => {
    expect([found('f'), photographed('p', 'f'), testResult('t'), typedLot('l')].map(showsAtOnce)).toEqual([false, false, false, false])
  })

  it('are said in full in the list of what waits', () => {
    expect([
      testResult('t', { result: 'indication', note: '6 mm along the beam' }), typedLot('l'), found('f', { sentence: 'By the thrust.' }), photographed('p', 'f'),
    ].map(sayWork)).toEqual([
      'Rod 1: indication, 6 mm along the beam', 'Piston 1, P1: lot 4711', 'Found: Scored web. By the thrust.', 'Photograph: Scored web',
    ])
  })
})
