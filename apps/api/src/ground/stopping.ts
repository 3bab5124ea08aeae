export type Stopping = {
  /** Something to end, and how many milliseconds to wait for it at most; the last one added is ended first. */
  readonly add: (end: () => unknown, patience?: number) => void
  /** Ends everything once; later calls wait for the same end. */
  readonly stop: () => Promise<void>
  /** Ends everything and the process, with exit code 1 and this sentence. */
  readonly fail: (sentence: string) => void
  readonly isStopping: () => boolean
}

type Step = { readonly end: () => unknown; readonly patience: number }

/**
 * Ends this process in order at Ctrl-C, at `kill`, and when its terminal closes. A signal that comes twice (from the
 * terminal and from npm) counts once. One that comes before there is anything to end waits for the first `add`, so
 * that a database which is just being started is not left behind. An error that nothing caught ends it in order as well.
 */
export function stopOnSignals(): Stopping {
  const steps: Step[] = []
  let asked = false
  let stopped: Promise<void> | undefined
  const stop = () => (stopped ??= endAll(steps))
  const exit = (code: number) => void stop().then(() => process.exit(code))
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.on(signal, () => {
      asked = true
      if (steps.length > 0) exit(0)
    })
  }
  const fail = (sentence: string) => {
    if (stopped) return
    process.stderr.write(`${sentence}\n`)
    exit(1)
  }
  process.on('uncaughtException', (error) => {
    console.error(error)
    fail('Something unexpected happened, told above: the program ends in order. Start it again.')
  })
  return {
    add: (end, patience = 10_000) => {
      steps.push({ end, patience })
      if (asked) exit(0)
    },
    stop,
    fail,
    isStopping: () => asked || stopped !== undefined,
  }
}

async function endAll(steps: Step[]): Promise<void> {
  // What is added meanwhile, by a start that was interrupted, is ended too.
  for (let step = steps.pop(); step !== undefined; step = steps.pop()) {
    const { end, patience } = step
    let timer: NodeJS.Timeout | undefined
    try {
      await Promise.race([end(), new Promise((resolve) => (timer = setTimeout(resolve, patience)))])
    } catch (error) {
      console.error(error)
    } finally {
      clearTimeout(timer)
    }
  }
}
