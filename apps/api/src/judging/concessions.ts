import type { Verdict } from '@tenths/domain'
import type { LiveConcession } from './evidence.ts'

/**
 * The concession that covers this verdict: it names the requirement and its interval holds what was measured.
 * A value that moved out of the interval since is covered no more, and what is not measured never is.
 */
export function concessionFor(
  verdict: Verdict, concessions: readonly LiveConcession[],
): LiveConcession | null {
  const { kind, least, greatest } = verdict
  if ((kind !== 'outside' && kind !== 'not-proven') || least === null || greatest === null) return null
  return concessions.find(({ requirement, low, high }) =>
    requirement === verdict.requirement && low <= least && greatest <= high) ?? null
}
