import type { readBuildRecord } from '@tenths/contract'
import type { AnswerOf } from '$lib/api/call.ts'

export type BuildRecord = AnswerOf<typeof readBuildRecord>
export type RecordedOperation = BuildRecord['operations'][number]
export type RecordedPass = BuildRecord['passes'][number]

/** Gauges that the readings of a verdict were taken with, each once. */
export function gaugesOf(record: BuildRecord, readings: readonly string[]): readonly string[] {
  const wanted = new Set(readings)
  return [...new Set(record.passes
    .filter((pass) => pass.readings.some(({ id }) => wanted.has(id)))
    .map(({ gaugeMark }) => gaugeMark))]
}

/** The passes taken at a step, in the order they were begun. */
export function passesAt(record: BuildRecord, operationKey: string): readonly RecordedPass[] {
  return record.passes
    .filter((pass) => pass.operationKey === operationKey)
    .toSorted((one, other) => one.openedAt.localeCompare(other.openedAt))
}

export type RecordedLine = RecordedOperation['lines'][number]

/** Each line of the fit sheet as it stood when it was judged last: a line may be measured at several steps of the route. */
export function lastLines(record: BuildRecord): readonly RecordedLine[] {
  const lines = new Map<string, RecordedLine>()
  for (const line of record.operations.flatMap((operation) => operation.lines)) {
    if (line.verdict.kind !== 'not-measured' || !lines.has(line.requirement.key)) lines.set(line.requirement.key, line)
  }
  return [...lines.values()]
}
