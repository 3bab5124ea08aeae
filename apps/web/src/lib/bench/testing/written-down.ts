import type { DoneAtStep } from '../outbox/done-at-step.ts'
import type { Found, Photographed, TestResult, TypedLot } from '../outbox/written-down.ts'

// What is written down at a crack test, invented, for the tests of the bench.

const done: DoneAtStep = {
  personId: 'A', by: 'A', jobId: 'job-1', jobNumber: 1, operationKey: 'crack-test', operationTitle: 'Crack test', behind: false,
  deviceAt: '2030-01-01T00:00:00Z', deviceOffset: null,
}

export const testResult = (id: string, changes: Partial<TestResult> = {}): TestResult => ({
  ...done, kind: 'inspection', id, item: 'rod-1', title: 'Rod 1', mark: 'R1', method: 'magnetic-particle', pressure: null,
  result: 'no-indication', note: '', inspector: { id: 'B', name: 'B' }, ...changes,
})
export const typedLot = (id: string, changes: Partial<TypedLot> = {}): TypedLot => ({
  ...done, kind: 'lot', id, partId: 'piston-A', title: 'Piston 1, P1', lot: '4711', reason: '', ...changes,
})
export const found = (id: string, changes: Partial<Found> = {}): Found => ({
  ...done, kind: 'finding', id, requirementKey: null, title: 'Scored web', sentence: '', stops: true, ...changes,
})
export const photographed = (id: string, of: string): Photographed => ({
  ...done, kind: 'photograph', id, subject: 'finding', subjectKey: of, caption: 'Scored web', picture: new Blob(['picture'], { type: 'image/jpeg' }),
})
