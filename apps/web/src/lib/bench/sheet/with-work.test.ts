import { describe, expect, it } from 'vitest'
import type { BenchWork } from '../outbox/bench-work.ts'
import type { DoneAtStep } from '../outbox/done-at-step.ts'
import { typed } from '../testing/typed.ts'
import type { OperationSheet } from './operation-sheet.ts'
import { withWork } from './with-work.ts'

const done: DoneAtStep = {
  personId: 'A', by: 'A', jobId: 'job-1', jobNumber: 1, operationKey: 'hone-small-ends', operationTitle: 'Hone small ends', behind: false,
  deviceAt: '2030-01-01T00:00:00Z', deviceOffset: null,
}
// Only what is looked at here.
const sheet = {
  job: { id: 'job-1' }, operation: { key: 'hone-small-ends' }, passes: [], observations: [], pending: [], signOffs: [],
  waitsFor: [{ key: 'wash', title: 'Wash', marked: false }], work: { running: false, minutes: 5 },
} as unknown as OperationSheet
const tick = (outcome: 'seen' | 'not-seen'): BenchWork => ({ ...done, kind: 'tick', id: outcome, item: 'oil-hole', title: 'Oil hole', outcome, note: '', since: null })
const signature = (operationKey: string): BenchWork => ({
  ...done, operationKey, kind: 'signature', id: 's', definitionHash: 'h', signers: [{ id: 'A', name: 'A' }], readings: [],
})

describe('a sheet with what was done on this device', () => {
  it('shows readings, the latest tick of each thing and the mark of its signature', () => {
    const shown = withWork(sheet, [
      typed('a'), tick('seen'), tick('not-seen'), signature('hone-small-ends'),
    ])
    expect(shown.passes.flatMap(({ readings }) => readings.map((reading) => reading.typed))).toEqual(['a'])
    expect(shown.observations).toMatchObject([{ item: 'oil-hole', outcome: 'not-seen', by: 'A' }])
    expect(shown.pending).toMatchObject([{ id: 's', state: 'to-confirm', signers: [{ name: 'A', confirmed: false }] }])
    expect(sheet.observations).toEqual([])
  })

  it('has the clock run from the first value or tick on, until it is paused or the step marked as signed, for whoever did it', () => {
    const turn = (action: 'start' | 'stop'): BenchWork => ({ ...done, kind: 'clock', id: action, action })
    const runs = (work: readonly BenchWork[], shown = sheet) => withWork(shown, work, 'A').work.running
    expect([runs([]), runs([typed('a')]), runs([tick('seen')]), runs([turn('start')])]).toEqual([false, true, true, true])
    expect([runs([typed('a'), turn('stop')]), runs([typed('a'), signature('hone-small-ends')])]).toEqual([false, false])
    expect([runs([typed('a', { personId: 'B' })]), runs([{ ...turn('start'), personId: 'B' }])]).toEqual([false, false])
    const slip = typed('a')
    expect(runs([{ ...slip, reading: { ...slip.reading, supersedes: 'reading-before', reason: 'Typed wrong' } }])).toBe(false)
    expect(runs([tick('not-seen')], { ...sheet, signOffs: [{ id: 'x', reopened: null }] } as unknown as OperationSheet)).toBe(false)
  })

  it('voids what a drifted gauge read at any step, and keeps it with a good zero', () => {
    const read = withWork(sheet, [typed('a')])
    const check = (deviation: number): BenchWork => ({
      ...done, operationKey: 'wash', kind: 'zero-check', id: 'z', gaugeId: 'gauge-1', gaugeMark: 'PG-1', deviation, typed: '', allowed: 2_540, passes: ['pass-1'],
    })
    expect(withWork(read, [check(2_540)]).passes).toMatchObject([{ isVoid: false, zero: { deviation: 2_540, by: 'A' } }])
    expect(withWork(read, [check(2_541)]).passes).toMatchObject([{ isVoid: true }])
    expect(withWork(sheet, [check(2_541)])).toBe(sheet)
  })

  it('knows when a step before it was marked as signed here', () => {
    expect(withWork(sheet, [signature('wash')]).waitsFor).toEqual([{ key: 'wash', title: 'Wash', marked: true }])
  })

  it('is the same sheet when nothing of its own was done, so that it need not be kept again', () => {
    expect(withWork(sheet, [{ ...tick('seen'), operationKey: 'wash' }, { ...tick('seen'), jobId: 'job-2' }])).toBe(sheet)
  })

  it('shows nothing twice that the service answers already', () => {
    const once = withWork(sheet, [typed('a'), signature('hone-small-ends')])
    expect(withWork(once, [typed('a'), signature('hone-small-ends')])).toEqual(once)
  })
})
