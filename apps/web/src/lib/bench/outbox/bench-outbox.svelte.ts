import { whoAmI } from '@tenths/contract'
import { call, newId } from '../../api/call.ts'
import type { ProblemError } from '../../api/problem.ts'
import { foldIn } from '../kept/fold-in.ts'
import { mustFollow, type BenchWork } from './bench-work.ts'
import { Outbox } from './outbox.ts'
import { isOfAnother, type OutboxEntry } from './outbox-entry.ts'
import { hasRoom } from './room.ts'
import { sendWork, type Arrived, type Reopened } from './send-work.ts'
import { Tabs } from './tabs.ts'
import { openWorkStore } from './work-store.ts'

/** After this long without an answer the network counts as away, in milliseconds. */
const patience = 30_000
/** The same for a photograph: a megabyte and a half takes its time on a slow line. */
const patienceForPhotograph = 120_000

/** Who measures types the next value within this time, mostly, in milliseconds. */
const restBetweenValues = 2_000

/** What was done on this device and is on its way to the service. It outlives the page on which it was done. */
class BenchOutbox {
  entries = $state.raw<readonly OutboxEntry<BenchWork>[]>([])
  /** Why nothing gets through at the moment; null while it does. */
  trouble = $state.raw<ProblemError | null>(null)
  /** Entries on this device that only a newer version of the program can read. */
  unreadable = $state(0)
  /** Steps that opened again because of what was stored last, and on which job. */
  reopened = $state.raw<{ readonly jobId: string; readonly steps: Reopened }>({ jobId: '', steps: [] })
  /** Where else a gauge read that was found to have drifted last, and on which job that was found. */
  alsoRead = $state.raw<{ readonly jobId: string; readonly gaugeId: string; readonly steps: Arrived['alsoRead'] }>({ jobId: '', gaugeId: '', steps: [] })
  /** Who is signed in, as far as this page knows: another tab may change that. */
  person = $state.raw<string | null>(null)

  #keeps = $state(true)
  #hasRoom = $state(true)
  readonly #wakes = new Set<() => void>()
  readonly #tabs = new Tabs((takenOff) => void this.#outbox.look(takenOff))
  readonly #outbox = new Outbox<BenchWork, Arrived>({
    store: openWorkStore(),
    send: (work, key) => sendWork(work, { key, signal: AbortSignal.timeout(work.kind === 'photograph' ? patienceForPhotograph : patience) }),
    whoSends: () => this.#whoSends(),
    typedBy: ({ personId }) => personId,
    laneOf: ({ jobId, operationKey }) => `${jobId}/${operationKey}`,
    mustFollow,
    alone: (work) => this.#tabs.alone(work),
    pause: (milliseconds) => new Promise((resume) => {
      const wake = () => { this.#wakes.delete(wake); resume() }
      this.#wakes.add(wake)
      if (milliseconds !== null) setTimeout(wake, milliseconds)
    }),
    rest: () => new Promise((done) => { setTimeout(done, restBetweenValues) }),
    stored: (work, { reopened, alsoRead }) => {
      const { jobId, kind } = work
      if (kind === 'reading' || kind === 'zero-check') this.reopened = { jobId, steps: reopened }
      else if (reopened.length > 0) this.reopened = { jobId, steps: reopened }
      if (kind === 'zero-check') this.alsoRead = { jobId, gaugeId: work.gaugeId, steps: alsoRead }
    },
    beforeLetGo: foldIn,
    comesLater: ({ behind }, { code }) => behind && code === 'operation-not-reachable',
    changed: ({ entries, trouble, canKeep, unreadable }) => {
      this.entries = entries
      this.#keeps = canKeep
      this.unreadable = unreadable
      // Nobody is known any more; the next attempt asks.
      if (trouble && isOfAnother(trouble)) this.person = null
      this.trouble = trouble
    },
    announce: (takenOff) => this.#tabs.announce(takenOff),
  })

  /** Whether the device keeps what is done. While it does not, nothing more is accepted. */
  get canKeep(): boolean {
    return this.#keeps && this.#hasRoom
  }

  /** Begins, or goes on, with what this person did. */
  begin(personId: string): void {
    this.person = personId
    void this.#lookForRoom()
    void this.#outbox.lookAs(personId)
    this.#wake()
  }

  add(work: BenchWork, insteadOf: OutboxEntry<BenchWork> | null = null): void {
    this.#outbox.add(newId(), work, insteadOf)
    void this.#lookForRoom()
  }

  /** Goes on at once instead of waiting for the next attempt. */
  sendNow(): void {
    void this.#lookForRoom()
    this.#wake()
    void this.#outbox.look()
  }

  /** As `sendNow`, when somebody else may have signed in meanwhile in another tab. */
  askAndSend(): void {
    this.person = null
    this.sendNow()
  }

  sendAgain(key: string): void {
    void this.#outbox.sendAgain(key)
  }

  /** Sends a value that the service found unlikely once more, with a person standing by it, and a note where that is wanted. */
  confirm(key: string, note?: string): void {
    const entry = this.entries.find((one) => one.key === key)
    if (entry?.content.kind !== 'reading') return
    const { content } = entry
    this.add({ ...content, confirmed: true, reading: { ...content.reading, confirmed: true, note: note?.trim() || content.reading.note } }, entry)
  }

  putAway(key: string, reason: string): void {
    void this.#outbox.putAway(key, reason)
  }

  settle(keys: readonly string[]): void {
    this.#outbox.settle(keys)
  }

  clear(keys: readonly string[]): void {
    void this.#outbox.clear(keys)
  }

  /** All of one job that is not put away, or of one of its steps. */
  of(jobId: string, operationKey?: string): readonly OutboxEntry<BenchWork>[] {
    return this.entries.filter(({ state, content }) => state !== 'put-away' && content.jobId === jobId
      && (operationKey === undefined || content.operationKey === operationKey))
  }

  /** Whether anything of a step is on its way, or has arrived and is not in the service's last answer yet. */
  isSending(jobId: string, operationKey: string): boolean {
    return this.of(jobId, operationKey).some(({ state }) => state === 'waiting' || state === 'stored')
  }

  async #whoSends(): Promise<string> {
    this.person ??= (await call(whoAmI, {}, { signal: AbortSignal.timeout(patience) })).id
    return this.person
  }

  async #lookForRoom(): Promise<void> {
    this.#hasRoom = await hasRoom()
  }

  #wake(): void {
    for (const wake of [...this.#wakes]) wake()
  }
}

export const benchOutbox = new BenchOutbox()
