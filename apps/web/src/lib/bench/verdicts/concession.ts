import type { Verdict } from '@tenths/domain'
import type { Concession } from '../sheet/operation-sheet.ts'

/** The owner's concession that covers a value as it was measured; null when none does. */
export function concessionFor(verdict: Verdict, concessions: readonly Concession[]): Concession | null {
  const { least, greatest } = verdict
  if (least === null || greatest === null) return null
  return concessions.find(({ requirement, low, high }) =>
    requirement === verdict.requirement && low <= least && greatest <= high) ?? null
}

/** Whether nothing about this requirement stands in the way of a signature. */
export function isGood(verdict: Verdict, concessions: readonly Concession[]): boolean {
  return verdict.kind === 'within' || (verdict.kind !== 'not-measured' && concessionFor(verdict, concessions) !== null)
}
