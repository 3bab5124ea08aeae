import type { Pass, Reading } from '../sheet/operation-sheet.ts'

/** One typed value with all it needs to arrive: where it was typed, by whom, in which pass, and what was said of it. */
export interface TypedReading {
  readonly personId: string
  readonly jobId: string
  readonly jobNumber: number
  readonly operationKey: string
  readonly operationTitle: string
  readonly cell: string
  readonly pass: Omit<Pass, 'readings'>
  readonly reading: Reading
  readonly confirmed: boolean
}

/** Exactly these fields, as plain data: nothing else that a page knows ever lies on the device, a PIN least of all. */
export function plainReading(typed: TypedReading): TypedReading {
  const { personId, jobId, jobNumber, operationKey, operationTitle, cell, pass, reading, confirmed } = typed
  const { id, partId, feature, number, gaugeId, gaugeMark, quantity, standardUncertainty, by, openedAt } = pass
  const { point, value, typed: text, supersedes, reason, takenAt } = reading
  return {
    personId, jobId, jobNumber, operationKey, operationTitle, cell, confirmed,
    pass: {
      id, partId, feature, number, operationKey: pass.operationKey, gaugeId, gaugeMark, quantity, standardUncertainty, by, openedAt,
      state: [...pass.state],
      setOn: pass.setOn && { partId: pass.setOn.partId, feature: pass.setOn.feature },
    },
    reading: { id: reading.id, point, value, typed: text, supersedes, reason, by: reading.by, takenAt },
  }
}
