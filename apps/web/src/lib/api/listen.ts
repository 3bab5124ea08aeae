import { eventStream, type Change, type streamEventNames } from '@tenths/contract'
import { address } from './call.ts'
import { changes, type News } from './changes.ts'

type StreamEvent = (typeof streamEventNames)[number]

/** Changes often come in bursts: the first is looked at at once, and one more look is enough for all that come within this time. */
const GATHER_MILLISECONDS = 200
const REOPEN_MILLISECONDS = 5_000
/** Names how far this browser has followed the shop. */
const SEEN = 'changes-seen'

/**
 * Lets what is shown follow the shop's data. One tab of a browser holds the stream and passes on to the others what
 * there is to look at; when it closes, another takes over. Where the browser has no locks (plain HTTP), each
 * tab listens for itself.
 * @returns how to stop
 */
export function listen(): () => void {
  const stopping = new AbortController()
  const { signal } = stopping
  const others = new BroadcastChannel('tenths-changes')
  const pass = gathered((news) => changes.tell(news), signal)
  others.onmessage = ({ data }: MessageEvent<News>) => pass(data)

  const hold = (): Promise<void> => holdStream((news) => { pass(news); others.postMessage(news) }, signal)
  if ('locks' in navigator) void navigator.locks.request('tenths-changes', { signal }, hold).catch(() => undefined)
  else void hold()
  signal.addEventListener('abort', () => others.close())
  return () => stopping.abort()
}

/**
 * Listens until it is stopped, from where this browser's last stream ended: what changed between a page's first reading
 * and the opening of its stream is told too. A browser that never listened reads everything once more instead. After a
 * break it comes back by itself with the last id it saw; where it gives
 * up (the server answered with a refusal), a new stream begins a little later and everything is looked at once.
 */
function holdStream(pass: (news: News) => void, signal: AbortSignal): Promise<void> {
  return new Promise((done) => {
    let stream = open()
    let again: ReturnType<typeof setTimeout> | undefined
    function open(): EventSource {
      const after = localStorage.getItem(SEEN)
      const opened = new EventSource(address(eventStream.path, {}, { after: after ?? '' }))
      const on = (name: StreamEvent, tell: (data: string) => void): void => opened.addEventListener(name, ({ data, lastEventId }: MessageEvent<string>) => {
        localStorage.setItem(SEEN, lastEventId)
        tell(data)
      })
      on('change', (data) => pass([JSON.parse(data) as Change]))
      on('resync', () => pass(null))
      on('ready', () => { if (after === null) pass(null) })
      let isBroken = false
      // The server is there again: what is shown from before is looked at anew, whether or not anything changed.
      opened.onopen = () => { if (isBroken) pass(null); isBroken = false }
      opened.onerror = () => {
        isBroken = true
        if (opened.readyState === EventSource.CLOSED) again = setTimeout(() => { stream = open(); pass(null) }, REOPEN_MILLISECONDS)
      }
      return opened
    }
    const end = (): void => { clearTimeout(again); stream.close(); done() }
    if (signal.aborted) end()
    else signal.addEventListener('abort', end)
  })
}

/** Tells the first news at once, and all that follow within a moment together. */
function gathered(tell: (news: News) => void, signal: AbortSignal): (news: News) => void {
  let resting: ReturnType<typeof setTimeout> | undefined
  let held: News = []
  signal.addEventListener('abort', () => clearTimeout(resting))
  const pass = (news: News): void => {
    if (signal.aborted) return
    held = held === null || news === null ? null : [...held, ...news]
    if (resting !== undefined) return
    const told = held
    held = []
    tell(told)
    resting = setTimeout(() => {
      resting = undefined
      if (held === null || held.length > 0) pass([])
    }, GATHER_MILLISECONDS)
  }
  return pass
}
