import type { ProblemError } from '../../api/problem.ts'

/** Something that was typed and must reach the service once, with what became of it so far. */
export interface OutboxEntry<Content> {
  /** The idempotency key: every attempt carries it, so that a repeat has one effect. */
  readonly key: string
  readonly content: Content
  readonly state: 'waiting' | 'stored' | 'refused'
  readonly problem: ProblemError | null
}

export interface OutboxWiring<Content, Answer> {
  /** @throws ProblemError as `call` does */
  readonly send: (content: Content, key: string) => Promise<Answer>
  /** Waits before the next attempt; resolves early when somebody asks to send now. */
  readonly pause: (milliseconds: number) => Promise<void>
  readonly stored: (content: Content, answer: Answer) => void
  readonly changed: (entries: readonly OutboxEntry<Content>[], trouble: ProblemError | null) => void
}

const firstPause = 1_000
const longestPause = 15_000

/** Troubles of the way, not of the content: the entry stays in its place and goes out again with the same key. */
function isPassing(problem: ProblemError): boolean {
  return problem.code === 'no-network' || problem.code === 'not-signed-in' || problem.status >= 500
}

/**
 * Sends one entry after the other in the order they were typed. A refused one stays visible and lets the next pass;
 * nothing is dropped unless a person drops it.
 */
export class Outbox<Content, Answer> {
  readonly #wiring: OutboxWiring<Content, Answer>
  #entries: readonly OutboxEntry<Content>[] = []
  #isRunning = false

  constructor(wiring: OutboxWiring<Content, Answer>) {
    this.#wiring = wiring
  }

  add(key: string, content: Content): void {
    this.#entries = [...this.#entries, { key, content, state: 'waiting', problem: null }]
    this.#tell(null)
    void this.#run()
  }

  /** Gives a refused entry another try, with the key it had: only success is ever stored under a key. */
  sendAgain(key: string): void {
    this.#replace(key, { state: 'waiting', problem: null })
    void this.#run()
  }

  /** Takes an entry off the list: one that was refused, or one that the service's answer shows by now. */
  drop(key: string): void {
    this.#entries = this.#entries.filter((entry) => entry.key !== key)
    this.#tell(null)
  }

  async #run(): Promise<void> {
    if (this.#isRunning) return
    this.#isRunning = true
    let pause = firstPause
    for (let next = this.#next(); next; next = this.#next()) {
      const problem = await this.#attempt(next)
      if (problem === null) {
        pause = firstPause
        continue
      }
      this.#tell(problem)
      await this.#wiring.pause(pause)
      pause = Math.min(pause * 2, longestPause)
    }
    this.#isRunning = false
  }

  /** One attempt; the trouble of the way when it must be made again. */
  async #attempt({ key, content }: OutboxEntry<Content>): Promise<ProblemError | null> {
    try {
      const answer = await this.#wiring.send(content, key)
      this.#replace(key, { state: 'stored', problem: null })
      this.#wiring.stored(content, answer)
      return null
    } catch (error) {
      const problem = error as ProblemError
      if (isPassing(problem)) return problem
      this.#replace(key, { state: 'refused', problem })
      return null
    }
  }

  #next(): OutboxEntry<Content> | undefined {
    return this.#entries.find(({ state }) => state === 'waiting')
  }

  #replace(key: string, change: Pick<OutboxEntry<Content>, 'state' | 'problem'>): void {
    this.#entries = this.#entries.map((entry) => (entry.key === key ? { ...entry, ...change } : entry))
    this.#tell(null)
  }

  #tell(trouble: ProblemError | null): void {
    this.#wiring.changed(this.#entries, trouble)
  }
}
