import 'fake-indexeddb/auto'
import { describe, expect, it } from 'vitest'
import { noNetwork, ProblemError } from '../../api/problem.ts'
import { add, device, service, texts, until } from '../testing/outbox-tabs.ts'
import { typed } from '../testing/typed.ts'
import type { BenchWork } from './bench-work.ts'

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
    behind: false, deviceAt: '2030-01-01T00:00:00Z', deviceOffset: null, gaugeId: 'gauge-1', gaugeMark: 'PG-1', deviation: 0, typed: '0', allowed: 2_540, passes: ['pass-1'],
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
