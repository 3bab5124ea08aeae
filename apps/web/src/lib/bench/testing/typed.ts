import type { TypedReading } from '../outbox/typed-reading.ts'
import { passOver, reading, tenth } from './samples.ts'

/** A value typed at a step, known by its text in the tests of the outbox. */
export function typed(text: string, changes: Partial<TypedReading> = {}): TypedReading {
  const { readings: _, ...pass } = passOver()
  return {
    kind: 'reading', behind: false, deviceOffset: null, cellTitle: `Rod 1 small end ${text}`, personId: 'A', jobId: 'job-1', jobNumber: 1, operationKey: 'hone-small-ends', operationTitle: 'Hone small ends',
    cell: `rod/1#small-end@${text}`, pass, reading: reading(`reading-${text}`, 'front/along-rod', 4 * tenth, { typed: text }),
    confirmed: false, ...changes,
  }
}
