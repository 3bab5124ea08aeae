import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { Gathered, later, laterUnlessMeasured, urgencyOfAll } from './urgency.ts'

const change = (jobId: string | null) => ({ kind: 'take-readings', jobId, operationKey: null })

describe('how soon a change is looked at', () => {
  const mine = ({ jobId }: { jobId: string | null }) => (jobId === 'mine' ? 'at-once' as const : jobId === null ? 'soon' as const : 'never' as const)

  it('is as soon as the most urgent of several asks', () => {
    expect(urgencyOfAll([change('other'), change('mine'), change(null)], mine)).toBe('at-once')
    expect(urgencyOfAll([change('other'), change(null)], mine)).toBe('soon')
    expect(urgencyOfAll([change('other')], mine)).toBe('never')
    expect(urgencyOfAll([], mine)).toBe('never')
  })

  it('is at once when nobody can tell what changed', () => {
    expect(urgencyOfAll(null, later)).toBe('at-once')
    expect(urgencyOfAll(null, laterUnlessMeasured)).toBe('at-once')
  })

  it('is never for a list of people while a bench only measures', () => {
    expect(urgencyOfAll([change('mine')], laterUnlessMeasured)).toBe('never')
    expect(urgencyOfAll([change('mine'), { kind: 'add-person', jobId: null, operationKey: null }], laterUnlessMeasured)).toBe('later')
  })
})

describe('what can wait until the changes rest', () => {
  beforeEach(() => { vi.useFakeTimers() })
  afterEach(() => { vi.useRealTimers() })

  it('is done once, after the last of them', () => {
    const work = vi.fn()
    const gathered = new Gathered(work)
    for (let count = 0; count < 4; count += 1) {
      gathered.ask('soon')
      vi.advanceTimersByTime(300)
    }
    expect(work).not.toHaveBeenCalled()
    vi.advanceTimersByTime(200)
    expect(work).toHaveBeenCalledTimes(1)
  })

  it('is done while they never rest, too', () => {
    const work = vi.fn()
    const gathered = new Gathered(work)
    for (let count = 0; count < 30; count += 1) {
      gathered.ask('soon')
      vi.advanceTimersByTime(200)
    }
    expect(work.mock.calls.length).toBeGreaterThanOrEqual(2)
  })

  it('is done the later the less anybody waits for it', () => {
    const work = vi.fn()
    const gathered = new Gathered(work)
    gathered.ask('later')
    vi.advanceTimersByTime(1_000)
    expect(work).not.toHaveBeenCalled()
    vi.advanceTimersByTime(1_000)
    expect(work).toHaveBeenCalledTimes(1)
  })

  it('is not done once nobody wants it any more', () => {
    const work = vi.fn()
    const gathered = new Gathered(work)
    gathered.ask('soon')
    gathered.cancel()
    vi.advanceTimersByTime(5_000)
    expect(work).not.toHaveBeenCalled()
  })
})
