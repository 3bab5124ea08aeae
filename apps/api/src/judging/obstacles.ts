import type { Verdict } from '@tenths/domain'
import type { Standing } from './standing.ts'
import { placesInWords } from './tested.ts'

/** How many things of one sort are named before the rest are counted: a sentence, not a page. */
const named = 3

/**
 * What keeps an operation from being signed, each as the part of a sentence; empty when it may be. Signed or
 * not, reachable or not, is another question.
 * @param titleOf the requirement's title by its key
 */
export function obstaclesOf(standing: Standing, titleOf: (requirementKey: string) => string): string[] {
  const titles = (kind: Verdict['kind']) => standing.verdicts
    .filter((verdict) => verdict.kind === kind && !standing.conceded.has(verdict.requirement))
    .map(({ requirement }) => titleOf(requirement))
  const incomplete = standing.unmeasured.map(({ title }) => title)
  return [
    list('not fully measured', [...new Set([...incomplete, ...titles('not-measured')])]),
    list('outside', titles('outside')),
    list('not proven', titles('not-proven')),
    list('not ticked as seen', standing.unseen.map(({ title }) => title)),
    list('not tested', standing.tests.untested.map(({ title }) => title)),
    list('not sound', standing.tests.unsound.map(({ title }) => title)),
    list('without lot or serial', placesInWords(standing.lotless)),
    list('waiting for the owner', standing.stoppedBy.map(({ title }) => title)),
  ].filter((part) => part !== null)
}

function list(words: string, titles: readonly string[]): string | null {
  if (titles.length === 0) return null
  const more = titles.length - named
  return `${words}: ${titles.slice(0, named).join(', ')}${more > 0 ? ` and ${more} more` : ''}`
}
