import { sayValue, type ReaderUnit } from '@tenths/domain'
import type { Suggestion } from './trial-fit-page.ts'

/** One figure of a suggestion, before and after. */
export interface Gain {
  readonly title: string
  readonly before: string
  readonly after: string
}

/** What would be gained, the thing that matters most first. */
export function gainsOf({ before, after }: Pick<Suggestion, 'before' | 'after'>, unit: ReaderUnit): readonly Gain[] {
  const say = (value: number) => sayValue(value, 'length', unit)
  return [
    { title: 'Outside their limits', before: String(before.outside), after: String(after.outside) },
    { title: 'Least room to a limit', before: roomWords(before.leastMargin, say), after: roomWords(after.leastMargin, say) },
    { title: 'Farthest from the target', before: say(before.worstDistance), after: say(after.worstDistance) },
    { title: 'All distances together', before: say(before.sumOfDistances), after: say(after.sumOfDistances) },
  ]
}

function roomWords(margin: number, say: (value: number) => string): string {
  return margin < 0 ? `${say(-margin)} beyond` : say(margin)
}

/** The values of a fit, least to greatest. */
export function fitWords({ least, greatest }: { readonly least: number; readonly greatest: number }, unit: ReaderUnit): string {
  const say = (value: number) => sayValue(value, 'length', unit)
  return least === greatest ? say(least) : `${say(least)} to ${say(greatest)}`
}
