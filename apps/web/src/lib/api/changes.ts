import type { Change } from '@tenths/contract'

/** What the shop's stream told: changes, or null when anything at all may have changed. */
export type News = readonly Change[] | null

/** Passes on what changed in the shop to all that is shown. */
class Changes {
  readonly #listeners = new Set<(news: News) => void>()

  tell(news: News): void {
    for (const listener of [...this.#listeners]) listener(news)
  }

  /** @returns how to stop */
  hear(listener: (news: News) => void): () => void {
    this.#listeners.add(listener)
    return () => void this.#listeners.delete(listener)
  }
}

export const changes = new Changes()
