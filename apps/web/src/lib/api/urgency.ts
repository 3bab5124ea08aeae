import type { Change } from '@tenths/contract'
import type { News } from './changes.ts'

const urgencies = ['at-once', 'soon', 'later', 'never'] as const

/** How soon what is shown is asked for again after a change: at once, when the changes rest a little or for a while, or not at all. */
export type Urgency = (typeof urgencies)[number]

/** What nobody waits for: while a bench measures, the whole shop changes at every reading. */
export function later(): Urgency {
  return 'later'
}

/** What a bench does all day long, and no list of people or names changes with. */
const measuring: ReadonlySet<string> = new Set(['take-readings', 'observe', 'start-work', 'check-zero', 'keep-photograph'])

/** As `later`, and not at all where somebody only measures. */
export function laterUnlessMeasured({ kind }: Change): Urgency {
  return measuring.has(kind) ? 'never' : 'later'
}

/** The most urgent of some news. */
export function urgencyOfAll(news: News, urgencyOf: (change: Change) => Urgency): Urgency {
  if (news === null) return 'at-once'
  const all = news.map(urgencyOf)
  return urgencies.find((urgency) => all.includes(urgency)) ?? 'never'
}

/** How long changes rest before they are looked at, and how long they are gathered at most, in milliseconds. */
const gathering = {
  soon: { rest: 400, longest: 2_000 },
  later: { rest: 1_500, longest: 6_000 },
} as const

/** Does something once for all calls that follow each other closely, and never much later than the first of them wanted it. */
export class Gathered {
  readonly #work: () => void
  #due: ReturnType<typeof setTimeout> | undefined
  #latest = Infinity

  constructor(work: () => void) {
    this.#work = work
  }

  ask(urgency: keyof typeof gathering, now = Date.now()): void {
    const { rest, longest } = gathering[urgency]
    this.#latest = Math.min(this.#latest, now + longest)
    clearTimeout(this.#due)
    this.#due = setTimeout(() => {
      this.cancel()
      this.#work()
    }, Math.max(0, Math.min(rest, this.#latest - now)))
  }

  cancel(): void {
    clearTimeout(this.#due)
    this.#latest = Infinity
  }
}
