import type { Change } from '@tenths/contract'
import type { News } from './changes.ts'

/** How soon what is shown is asked for again after a change: at once, when the changes rest, or not at all. */
export type Urgency = 'at-once' | 'soon' | 'never'

/** What nobody waits for: it is asked for when the changes rest. */
export function soon(): Urgency {
  return 'soon'
}

/** The most urgent of some news. */
export function urgencyOfAll(news: News, urgencyOf: (change: Change) => Urgency): Urgency {
  if (news === null) return 'at-once'
  const all = news.map(urgencyOf)
  return all.find((one) => one === 'at-once') ?? all.find((one) => one === 'soon') ?? 'never'
}

const REST_MILLISECONDS = 400
const LONGEST_MILLISECONDS = 2_000

/** Does something once for all calls that follow each other closely, and never much later than the first of them wanted it. */
export class Gathered {
  readonly #work: () => void
  #due: ReturnType<typeof setTimeout> | undefined
  #since: number | null = null

  constructor(work: () => void) {
    this.#work = work
  }

  ask(now = Date.now()): void {
    this.#since ??= now
    clearTimeout(this.#due)
    this.#due = setTimeout(() => {
      this.cancel()
      this.#work()
    }, Math.max(0, Math.min(REST_MILLISECONDS, this.#since + LONGEST_MILLISECONDS - now)))
  }

  cancel(): void {
    clearTimeout(this.#due)
    this.#since = null
  }
}
