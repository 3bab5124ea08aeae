import { describe, expect, it } from 'vitest'
import type { BenchWork } from '../outbox/bench-work.ts'
import type { OperationSheet } from '../sheet/operation-sheet.ts'
import { bushing, pin, placed } from '../testing/samples.ts'
import { keptStep } from './kept-step.ts'

// Only what is looked at here.
const sheet = (key: string, changes: object = {}) => ({
  job: { id: 'job-1' }, state: 'ready', operation: { key, title: key, features: [bushing] }, placed, passes: [], observations: [],
  pending: [], signOffs: [], waitsFor: [], work: { running: false, minutes: 0 }, ...changes,
}) as unknown as OperationSheet
const waits = { waitsFor: [{ key: 'wash', title: 'Wash', marked: false }] }
const pins = { operation: { key: 'pins', title: 'pins', features: [pin] } }
const led = (sheets: readonly OperationSheet[], mark: string | null, work: readonly BenchWork[] = []) => keptStep(sheets, work, mark)?.key

describe('a tag that is scanned without a network', () => {
  it('leads to the step looked at last that can begin, of a part to one that measures it', () => {
    expect(led([sheet('hone', waits), sheet('measure'), sheet('bush')], null)).toBe('measure')
    expect(led([sheet('pins', pins), sheet('hone')], 'r1')).toBe('hone')
    expect(led([sheet('pins', pins), sheet('hone', waits)], 'R1')).toBe('hone')
  })

  it('leads past a step that is signed, or was marked as signed on this very device', () => {
    const marked: BenchWork = {
      kind: 'signature', id: 's', definitionHash: 'h', signers: [{ id: 'A', name: 'A' }], readings: [], personId: 'A', by: 'A', jobId: 'job-1',
      jobNumber: 1, operationKey: 'bush', operationTitle: 'bush', behind: false, deviceAt: '2030-01-01T00:00:00Z', deviceOffset: null,
    }
    expect(led([sheet('wash', { state: 'signed' }), sheet('bush'), sheet('hone')], 'R1', [marked])).toBe('hone')
  })

  it('leads nowhere where no kept step measures the part', () => {
    expect(led([sheet('pins', pins)], 'R1')).toBeUndefined()
    expect(led([], null)).toBeUndefined()
  })
})
