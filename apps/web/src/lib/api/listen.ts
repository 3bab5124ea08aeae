import { eventStream, type streamEventNames } from '@tenths/contract'
import { changes } from './changes.svelte.ts'

type StreamEvent = (typeof streamEventNames)[number]

/** Changes often come in bursts: the first is looked at at once, and one more look is enough for all that come within this time. */
const GATHER_MILLISECONDS = 200
const REOPEN_MILLISECONDS = 5_000

/**
 * Lets what is shown follow the shop's data. One tab of a browser holds the stream and passes on to the others that
 * there is something to look at; when it closes, another takes over. Where the browser has no locks (plain HTTP), each
 * tab listens for itself.
 * @returns how to stop
 */
export function listen(): () => void {
  const stopping = new AbortController()
  const { signal } = stopping
  const others = new BroadcastChannel('tenths-changes')
  const look = gathered(() => changes.announce(), signal)
  others.onmessage = look

  const hold = (): Promise<void> => holdStream(() => { look(); others.postMessage(null) }, signal)
  if ('locks' in navigator) void navigator.locks.request('tenths-changes', { signal }, hold).catch(() => undefined)
  else void hold()
  signal.addEventListener('abort', () => others.close())
  return () => stopping.abort()
}

/**
 * Listens until it is stopped. After a break the browser comes back by itself with the last id it saw; where it gives
 * up (the server answered with a refusal), a new stream begins a little later and everything is looked at once.
 */
function holdStream(look: () => void, signal: AbortSignal): Promise<void> {
  return new Promise((done) => {
    let stream = open()
    let again: ReturnType<typeof setTimeout> | undefined
    function open(): EventSource {
      const opened = new EventSource(eventStream.path)
      opened.addEventListener('change' satisfies StreamEvent, look)
      opened.addEventListener('resync' satisfies StreamEvent, look)
      let isBroken = false
      // The server is there again: what is shown from before is looked at anew, whether or not anything changed.
      opened.onopen = () => { if (isBroken) look(); isBroken = false }
      opened.onerror = () => {
        isBroken = true
        if (opened.readyState === EventSource.CLOSED) again = setTimeout(() => { stream = open(); look() }, REOPEN_MILLISECONDS)
      }
      return opened
    }
    const end = (): void => { clearTimeout(again); stream.close(); done() }
    if (signal.aborted) end()
    else signal.addEventListener('abort', end)
  })
}

function gathered(work: () => void, signal: AbortSignal): () => void {
  let resting: ReturnType<typeof setTimeout> | undefined
  let isAsked = false
  signal.addEventListener('abort', () => clearTimeout(resting))
  const look = (): void => {
    isAsked = resting !== undefined
    if (isAsked || signal.aborted) return
    work()
    resting = setTimeout(() => { resting = undefined; if (isAsked) look() }, GATHER_MILLISECONDS)
  }
  return look
}
