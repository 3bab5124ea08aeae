import { takeReadings, whoAmI } from '@tenths/contract'
import { call, newId, type AnswerOf } from '../../api/call.ts'
import type { ProblemError } from '../../api/problem.ts'
import { Outbox } from './outbox.ts'
import { isOfAnother, type OutboxEntry } from './outbox-entry.ts'
import { openWorkStore } from './work-store.ts'
import { Tabs } from './tabs.ts'
import type { TypedReading } from './typed-reading.ts'

type Answer = AnswerOf<typeof takeReadings>

/** After this long without an answer the network counts as away, in milliseconds. */
const patience = 30_000

/** The values of this device that are on their way to the service. They outlive the page that typed them. */
class BenchOutbox {
  entries = $state.raw<readonly OutboxEntry<TypedReading>[]>([])
  /** Why nothing gets through at the moment; null while it does. */
  trouble = $state.raw<ProblemError | null>(null)
  /** Whether the device keeps what is typed. */
  canKeep = $state(true)
  /** What the service answered to the latest stored value. */
  latest = $state.raw<{ content: TypedReading; answer: Answer } | null>(null)
  /** Who is signed in, as far as this page knows: another tab may change that. */
  person = $state.raw<string | null>(null)

  readonly #wakes = new Set<() => void>()
  readonly #tabs = new Tabs((takenOff) => void this.#outbox.look(takenOff))
  readonly #outbox = new Outbox<TypedReading, Answer>({
    store: openWorkStore(),
    send: sendReading,
    whoSends: () => this.#whoSends(),
    typedBy: ({ personId }) => personId,
    laneOf: ({ jobId, operationKey }) => `${jobId}/${operationKey}`,
    alone: (work) => this.#tabs.alone(work),
    pause: (milliseconds) => new Promise((resume) => {
      const wake = () => { this.#wakes.delete(wake); resume() }
      this.#wakes.add(wake)
      if (milliseconds !== null) setTimeout(wake, milliseconds)
    }),
    stored: (content, answer) => { this.latest = { content, answer } },
    changed: ({ entries, trouble, canKeep }) => {
      this.entries = entries
      this.canKeep = canKeep
      // Nobody is known any more; the next attempt asks.
      if (trouble && isOfAnother(trouble)) this.person = null
      this.trouble = trouble
    },
    announce: (takenOff) => this.#tabs.announce(takenOff),
  })

  /** Begins, or goes on, with what this person typed. */
  begin(personId: string): void {
    this.person = personId
    void this.#outbox.lookAs(personId)
    this.#wake()
  }

  add(content: TypedReading, insteadOf: OutboxEntry<TypedReading> | null = null): void {
    this.#outbox.add(newId(), content, insteadOf)
  }

  /** Goes on at once instead of waiting for the next attempt. */
  sendNow(): void {
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

  /** Sends a value that the service found unlikely once more, with a person standing by it. */
  confirm(key: string): void {
    const entry = this.entries.find((one) => one.key === key)
    if (entry !== undefined) this.add({ ...entry.content, confirmed: true }, entry)
  }

  drop(...keys: readonly string[]): void {
    void this.#outbox.drop(keys)
  }

  of(jobId: string, operationKey: string): readonly OutboxEntry<TypedReading>[] {
    return this.entries.filter(({ content }) => content.jobId === jobId && content.operationKey === operationKey)
  }

  async #whoSends(): Promise<string> {
    this.person ??= (await call(whoAmI, {}, { signal: AbortSignal.timeout(patience) })).id
    return this.person
  }

  #wake(): void {
    for (const wake of [...this.#wakes]) wake()
  }
}

export const benchOutbox = new BenchOutbox()

function sendReading({ personId, jobId, operationKey, pass, reading, confirmed }: TypedReading, key: string): Promise<Answer> {
  const { id, partId, feature, number, gaugeId, state, setOn } = pass
  return call(takeReadings, {
    params: { id: jobId },
    body: {
      operationKey,
      takenBy: personId,
      pass: { id, partId, feature, number, gaugeId, state, setOn },
      readings: [{
        id: reading.id,
        point: reading.point,
        value: reading.value,
        typed: reading.typed,
        supersedes: reading.supersedes,
        reason: reading.reason,
        deviceAt: reading.takenAt,
        confirmed,
      }],
    },
  }, { key, signal: AbortSignal.timeout(patience) })
}
