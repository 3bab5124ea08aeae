import { describe, expect, it } from 'vitest'
import { noNetwork, ProblemError } from '../../api/problem.ts'
import { Outbox, type OutboxEntry } from './outbox.ts'

/** An outbox whose service answers what the test says, and whose pauses end when the test lets them. */
function setUp(answer: (content: string, attempt: number) => ProblemError | null) {
  const sent: { content: string; key: string }[] = []
  const seen = { entries: [] as readonly OutboxEntry<string>[], trouble: null as ProblemError | null, pauses: [] as number[] }
  const stored: string[] = []
  let resume = () => undefined as void
  const outbox = new Outbox<string, string>({
    send: async (content, key) => {
      sent.push({ content, key })
      const problem = answer(content, sent.length)
      if (problem) throw problem
      return `took ${content}`
    },
    pause: (milliseconds) => new Promise((done) => { seen.pauses.push(milliseconds); resume = done }),
    stored: (content) => stored.push(content),
    changed: (entries, trouble) => { seen.entries = entries; seen.trouble = trouble },
  })
  const settle = () => new Promise((done) => setTimeout(done, 0))
  return { outbox, sent, seen, stored, settle, resume: () => resume() }
}

const refusal = new ProblemError('length-too-fine', 422, 'Too fine.')

describe('the outbox', () => {
  it('sends values one after the other in the order they were typed', async () => {
    const { outbox, sent, stored, settle } = setUp(() => null)
    outbox.add('k1', 'a'); outbox.add('k2', 'b'); outbox.add('k3', 'c')
    await settle()
    expect(sent.map(({ content }) => content)).toEqual(['a', 'b', 'c'])
    expect(stored).toEqual(['a', 'b', 'c'])
  })

  it('repeats a value with the same key until the network is back, and lets none overtake', async () => {
    const { outbox, sent, seen, settle, resume } = setUp((_, attempt) => (attempt <= 2 ? noNetwork() : null))
    outbox.add('k1', 'a'); outbox.add('k2', 'b')
    await settle()
    expect(seen.trouble?.code).toBe('no-network')
    resume(); await settle(); resume(); await settle()
    expect(sent).toEqual([
      { content: 'a', key: 'k1' }, { content: 'a', key: 'k1' }, { content: 'a', key: 'k1' }, { content: 'b', key: 'k2' },
    ])
    expect(seen.pauses).toEqual([1_000, 2_000])
    expect(seen.trouble).toBeNull()
  })

  it('waits out an expired sign-in and a busy server instead of calling them refusals', async () => {
    const troubles = [new ProblemError('not-signed-in', 401, ''), new ProblemError('busy', 503, '')]
    const { outbox, seen, settle, resume } = setUp((_, attempt) => troubles[attempt - 1] ?? null)
    outbox.add('k1', 'a')
    await settle()
    expect(seen.entries[0]?.state).toBe('waiting')
    resume(); await settle(); resume(); await settle()
    expect(seen.entries[0]?.state).toBe('stored')
  })

  it('keeps a refused value in sight with its reason and goes on with the next', async () => {
    const { outbox, seen, stored, settle } = setUp((content) => (content === 'a' ? refusal : null))
    outbox.add('k1', 'a'); outbox.add('k2', 'b')
    await settle()
    expect(seen.entries.find(({ key }) => key === 'k1')).toMatchObject({ state: 'refused', problem: refusal })
    expect(stored).toEqual(['b'])
  })

  it('sends a refused value again on request, under the key it had', async () => {
    const { outbox, sent, stored, settle } = setUp((_, attempt) => (attempt === 1 ? refusal : null))
    outbox.add('k1', 'a')
    await settle()
    outbox.sendAgain('k1')
    await settle()
    expect(sent.map(({ key }) => key)).toEqual(['k1', 'k1'])
    expect(stored).toEqual(['a'])
  })

  it('drops nothing but what a person drops', async () => {
    const { outbox, seen, settle } = setUp(() => refusal)
    outbox.add('k1', 'a'); outbox.add('k2', 'b')
    await settle()
    outbox.drop('k1')
    expect(seen.entries.map(({ key }) => key)).toEqual(['k2'])
  })
})
