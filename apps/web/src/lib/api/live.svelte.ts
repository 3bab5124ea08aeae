import type { Change } from '@tenths/contract'
import { changes } from './changes.ts'
import { keepSame } from '../keep-same.ts'
import { noNetwork, ProblemError } from './problem.ts'
import { Gathered, urgencyOfAll, type Urgency } from './urgency.ts'

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
 * @param urgencyOf how soon a change is to be seen here; at once when left out
 */
export function live<T>(ask: (signal: AbortSignal) => Promise<T>, urgencyOf: (change: Change) => Urgency = () => 'at-once'): Live<T> {
  let value = $state.raw<T>()
  let problem = $state.raw<ProblemError>()
  let loading = $state(true)
  let running: AbortController | undefined
  let newest: Promise<void> = Promise.resolve()
  const gathered = new Gathered(() => void run())

  /** Whoever waits for an asking that a newer one overtook waits for that: afterwards the value is never an old one. */
  function run(): Promise<void> {
    gathered.cancel()
    running?.abort()
    running = new AbortController()
    newest = askOnce(running.signal)
    return newest
  }

  async function askOnce(signal: AbortSignal): Promise<void> {
    const answer = ask(signal)
    loading = true
    try {
      const fresh = await answer
      if (signal.aborted) return overtakenBy(signal)
      value = keepSame(value, fresh)
      problem = undefined
    } catch (error) {
      if (signal.aborted) return overtakenBy(signal)
      problem = error instanceof ProblemError ? error : noNetwork()
    }
    loading = false
  }

  /** The newer asking; nothing when the component went away meanwhile. */
  function overtakenBy(signal: AbortSignal): Promise<void> | undefined {
    return running?.signal === signal ? undefined : newest
  }

  $effect(() => {
    void run()
    return () => running?.abort()
  })

  $effect(() => {
    const stop = changes.hear((news) => {
      const urgency = urgencyOfAll(news, urgencyOf)
      if (urgency === 'at-once') void run()
      else if (urgency !== 'never') gathered.ask(urgency)
    })
    return () => {
      stop()
      gathered.cancel()
    }
  })

  return {
    get value() { return value },
    get problem() { return problem },
    get loading() { return loading },
    refresh: run,
  }
}
