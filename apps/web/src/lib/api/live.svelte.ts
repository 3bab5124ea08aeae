import { changes } from './changes.svelte.ts'
import { noNetwork, ProblemError } from './problem.ts'

/** What a page shows of the API: the last answer stays while a newer one is fetched or fails. */
export interface Live<T> {
  readonly value: T | undefined
  readonly problem: ProblemError | undefined
  readonly loading: boolean
  refresh(): Promise<void>
}

/**
 * Asks once the component is there, again when anything `ask` reads changes, and again when the shop's data change.
 * Call it while a component is made. An older answer never replaces a newer one.
 */
export function live<T>(ask: (signal: AbortSignal) => Promise<T>): Live<T> {
  let value = $state.raw<T>()
  let problem = $state.raw<ProblemError>()
  let loading = $state(true)
  let running: AbortController | undefined

  async function run(): Promise<void> {
    running?.abort()
    const mine = (running = new AbortController())
    const answer = ask(mine.signal)
    loading = true
    try {
      const fresh = await answer
      if (mine.signal.aborted) return
      value = fresh
      problem = undefined
    } catch (error) {
      if (mine.signal.aborted) return
      problem = error instanceof ProblemError ? error : noNetwork()
    }
    loading = false
  }

  $effect(() => {
    void changes.seen
    void run()
    return () => running?.abort()
  })

  return {
    get value() { return value },
    get problem() { return problem },
    get loading() { return loading },
    refresh: run,
  }
}
