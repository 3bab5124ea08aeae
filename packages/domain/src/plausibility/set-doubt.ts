import { median } from '../statistics/sample.ts'
import { ask, type Doubt } from './doubt.ts'
import type { PlausibilityNumbers } from './numbers.ts'

/**
 * A whole set of readings of one kind in the order typed, and the set before it when nothing was machined
 * between.
 */
export interface SetContext {
  readonly values: readonly number[]
  readonly unmachinedBefore: readonly number[] | null
}

/** All of a set moved together, or looks copied. */
export function doubtsOfSet({ values, unmachinedBefore }: SetContext, { set }: PlausibilityNumbers): Doubt[] {
  const doubts: Doubt[] = []
  if (values.length > 0 && unmachinedBefore !== null && unmachinedBefore.length > 0) {
    if (Math.abs(median(values) - median(unmachinedBefore)) > set.offset) {
      doubts.push(ask('offset', 'The whole set has moved and nothing was machined: check the gauge’s zero.'))
    }
  }
  const spread = Math.max(...values) - Math.min(...values)
  if ((values.length >= set.equalFrom && spread < set.equalWithin) || longestRun(values) >= set.run) {
    doubts.push(ask('copied', 'These are all the same: read one by one, or copied?'))
  }
  return doubts
}

function longestRun(values: readonly number[]): number {
  let longest = 0
  let run = 0
  values.forEach((value, index) => {
    run = index > 0 && value === values[index - 1] ? run + 1 : 1
    longest = Math.max(longest, run)
  })
  return longest
}
