import { warmthOf, type CountingReading, type FeaturePass } from '@tenths/domain'
import type { Pass, Reading } from '../sheet/operation-sheet.ts'

/** The readings that count: the end of each chain of corrections, in the order in which they were taken. */
export function countingReadings(readings: readonly Reading[]): readonly Reading[] {
  const superseded = new Set(readings.map(({ supersedes }) => supersedes))
  return readings.filter(({ id }) => !superseded.has(id))
}

/** The reading that counts at a point of a pass; null when the point is still empty. */
export function countingAt(pass: Pass | null, point: string): Reading | null {
  return countingReadings(pass?.readings ?? []).find((reading) => reading.point === point) ?? null
}

/** All that was ever read at a point of a pass before the value that counts, oldest first. */
export function supersededAt(pass: Pass, point: string): readonly Reading[] {
  const counting = countingAt(pass, point)
  return pass.readings.filter((reading) => reading.point === point && reading.id !== counting?.id)
}

/** A pass as the judge wants it. */
export function toFeaturePass(pass: Pass): FeaturePass {
  const readings: CountingReading[] = countingReadings(pass.readings).map(({ id, point, value, blades }) => ({ id, point, value, blades }))
  return {
    partId: pass.partId,
    feature: pass.feature,
    number: pass.number,
    standardUncertainty: pass.standardUncertainty,
    state: pass.state,
    setOn: pass.setOn,
    beside: pass.beside ?? [],
    readings,
    warmth: warmthOf(pass),
    isVoid: pass.isVoid,
  }
}
