import { vi } from 'vitest'
import { ProblemError } from '../../api/problem.ts'
import { mustFollow, type BenchWork } from '../outbox/bench-work.ts'
import { Outbox, type OutboxState, type OutboxWiring } from '../outbox/outbox.ts'
import { openWorkStore } from '../outbox/work-store.ts'
import { typed } from './typed.ts'

/** What reached the service, and what it answers: a problem to refuse, null to take it. */
export interface Service {
  readonly sent: { readonly text: string; readonly key: string }[]
  answer(text: string, attempt: number): ProblemError | null | Promise<ProblemError | null>
}

export function service(answer: Service['answer'] = () => null): Service {
  return { sent: [], answer }
}

export interface Tab {
  readonly outbox: Outbox<BenchWork, string>
  readonly pauses: (number | null)[]
  readonly stored: string[]
  /** What had arrived when the device let go of it. */
  readonly letGo: string[]
  now: OutboxState<BenchWork>
  /** Ends the pause that the outbox is in. */
  resume(): void
  close(): void
}

/** By which a test knows a piece of work. */
function textOf(work: BenchWork): string {
  return work.kind === 'reading' ? work.reading.typed : work.id
}

/** The tabs of one device over one store; nothing is heard of a tab that was closed. */
export function device(to: Service, who: () => string = () => 'A') {
  const name = `outbox-${crypto.randomUUID()}`
  const tabs: Tab[] = []
  let turn: Promise<unknown> = Promise.resolve()

  function open({ store = openWorkStore(name), rest = () => Promise.resolve() }: Partial<Pick<OutboxWiring<BenchWork, string>, 'store' | 'rest'>> = {}): Tab {
    let isOpen = true
    const wakes: (() => void)[] = []
    const never = new Promise<never>(() => undefined)
    const tab: Tab = {
      pauses: [], stored: [], letGo: [], now: { entries: [], trouble: null, canKeep: true, unreadable: 0 },
      resume: () => { for (const wake of wakes.splice(0)) wake() },
      close: () => { isOpen = false; tabs.splice(tabs.indexOf(tab), 1) },
      outbox: new Outbox<BenchWork, string>({
        store,
        send: async (work, key) => {
          to.sent.push({ text: textOf(work), key })
          const problem = await to.answer(textOf(work), to.sent.length)
          if (!isOpen) return never
          if (problem) throw problem
          return 'taken'
        },
        whoSends: async () => who(),
        typedBy: ({ personId }) => personId,
        laneOf: ({ jobId, operationKey }) => `${jobId}/${operationKey}`,
        mustFollow,
        alone: (work) => {
          const done = turn.then(() => work())
          // A tab that was closed lets go of its turn, as a browser has it.
          turn = Promise.race([done, new Promise((gone) => { const wait = setInterval(() => {
            if (!isOpen) { clearInterval(wait); gone(undefined) }
          }, 1); void done.finally(() => clearInterval(wait)) })])
          return done
        },
        pause: (milliseconds) => new Promise((done) => { tab.pauses.push(milliseconds); wakes.push(done) }),
        rest,
        stored: (work) => void tab.stored.push(textOf(work)),
        beforeLetGo: async (works) => void tab.letGo.push(...works.map(textOf)),
        comesLater: ({ behind }, { code }) => behind && code === 'operation-not-reachable',
        changed: (now) => { tab.now = now },
        announce: (takenOff) => { for (const other of tabs) if (other !== tab) void other.outbox.look(takenOff) },
      }),
    }
    tabs.push(tab)
    return tab
  }
  return { open, name, store: () => openWorkStore(name) }
}

/** A refusal that no repeat heals. */
export const refusal = new ProblemError('length-too-fine', 422, 'Too fine.')

/** Types values of these names into a tab, each under its own key. */
export function add(tab: Tab, ...names: string[]): void {
  for (const name of names) tab.outbox.add(`key-${name}`, typed(name))
}

/** What lies in a tab in one state, by its text. */
export function texts(tab: Tab, state: string): string[] {
  return tab.now.entries.filter((one) => one.state === state).map(({ content }) => textOf(content))
}

export function keys(tab: Tab): string[] {
  return tab.now.entries.map(({ key }) => key)
}

/** Looks again and again until it holds. */
export function until(look: () => unknown): Promise<unknown> {
  return vi.waitFor(look, { timeout: 2_000, interval: 2 })
}
