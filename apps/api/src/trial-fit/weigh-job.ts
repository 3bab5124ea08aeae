import {
  featureKey, measurementsOf, suggestions, trialFit, type Suggestion, type TrialFit,
} from '@tenths/domain'
import { concessionFor } from '../judging/concessions.ts'
import type { Evidence } from '../judging/evidence.ts'
import { standingsOf } from '../judging/standing.ts'
import { canonicalText, textHash } from '../seals/canonical.ts'

/** A suggestion with the name under which it can be applied. */
export interface KeyedSuggestion extends Suggestion {
  readonly key: string
}

/** The forecast of every fit of a job as it stands. */
export function forecastOf(evidence: Evidence): TrialFit {
  const { plan, placed, passes, settings, concessions } = evidence
  return trialFit(plan, measurementsOf(placed, passes), settings, {
    stillToCut: stillToCut(evidence),
    isConceded: (verdict) => concessionFor(verdict, concessions) !== null,
  })
}

/**
 * Better places for parts of the job as it stands. The key is the hash of all that a suggestion says, its figures
 * included: one reading or one move of its parts later it names nothing any more, while readings elsewhere leave it.
 */
export function suggestionsOf(evidence: Evidence): KeyedSuggestion[] {
  const { plan, placed, passes, settings } = evidence
  return suggestions(plan, { placed, passes }, stillToCut(evidence), settings)
    .map((suggestion) => ({ key: textHash(canonicalText(suggestion)), ...suggestion }))
}

/** What the machines of unsigned steps have still to cut: features that were not measured at those steps yet. */
function stillToCut(evidence: Evidence): Map<string, string> {
  return new Map(standingsOf(evidence)
    .filter(({ operation, state }) => operation.stage === 'machining' && state !== 'signed')
    .flatMap(({ operation, unmeasured }) => unmeasured.map((feature) => [featureKey(feature), operation.title] as const)))
}
