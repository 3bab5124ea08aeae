import { takeReadings } from '@tenths/contract'
import { call, newId, type AnswerOf } from '../../api/call.ts'
import type { ProblemError } from '../../api/problem.ts'
import type { Pass, Reading } from '../sheet/operation-sheet.ts'
import { Outbox, type OutboxEntry } from './outbox.ts'

/** One typed value with all it needs to arrive: where it was typed, in which pass, and what was said of it. */
export interface TypedReading {
  readonly jobId: string
  readonly operationKey: string
  readonly cell: string
  readonly pass: Omit<Pass, 'readings'>
  readonly reading: Reading
  readonly confirmed: boolean
}

type Answer = AnswerOf<typeof takeReadings>

/** The values of this browser that are on their way to the service. It outlives the page that typed them. */
class ReadingOutbox {
  entries = $state.raw<readonly OutboxEntry<TypedReading>[]>([])
  /** Why nothing gets through at the moment; null while it does. */
  trouble = $state.raw<ProblemError | null>(null)
  /** What the service answered to the latest stored value. */
  latest = $state.raw<{ content: TypedReading; answer: Answer } | null>(null)

  #wake: () => void = () => undefined
  readonly #outbox = new Outbox<TypedReading, Answer>({
    send: sendReading,
    pause: (milliseconds) => new Promise((resume) => {
      this.#wake = resume
      setTimeout(resume, milliseconds)
    }),
    stored: (content, answer) => { this.latest = { content, answer } },
    changed: (entries, trouble) => {
      this.entries = entries
      this.trouble = trouble
    },
  })

  add(content: TypedReading): void {
    this.#outbox.add(newId(), content)
  }

  /** Goes on at once instead of waiting for the next attempt. */
  sendNow(): void {
    this.#wake()
  }

  sendAgain(key: string): void {
    this.#outbox.sendAgain(key)
  }

  /** Sends a value that the service found unlikely once more, with a person standing by it. */
  confirm(key: string): void {
    const entry = this.entries.find((one) => one.key === key)
    if (entry === undefined) return
    this.drop(key)
    this.add({ ...entry.content, confirmed: true })
  }

  drop(key: string): void {
    this.#outbox.drop(key)
  }

  of(jobId: string, operationKey: string): readonly OutboxEntry<TypedReading>[] {
    return this.entries.filter(({ content }) => content.jobId === jobId && content.operationKey === operationKey)
  }
}

export const readingOutbox = new ReadingOutbox()

function sendReading({ jobId, operationKey, pass, reading, confirmed }: TypedReading, key: string): Promise<Answer> {
  const { id, partId, feature, number, gaugeId, state, setOn } = pass
  return call(takeReadings, {
    params: { id: jobId },
    body: {
      operationKey,
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
  }, { key })
}
