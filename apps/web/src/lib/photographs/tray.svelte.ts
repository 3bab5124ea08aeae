import { keepPhotograph, type photographSubjects } from '@tenths/contract'
import { call, newId } from '$lib/api/call.ts'
import { noNetwork, ProblemError } from '$lib/api/problem.ts'
import { NotTaken } from './not-taken.ts'
import type * as Shrink from './shrink.ts'

/** What photographs belong to. */
export interface Subject {
  readonly jobId: string
  readonly subject: (typeof photographSubjects)[number]
  readonly subjectKey: string
  readonly operationKey: string | null
  /** Said of each to whoever cannot see it. */
  readonly caption: string
}

/** A photograph in hand that has not been kept yet. */
export interface InHand {
  readonly id: string
  readonly key: string
  readonly picture: Blob
}

/** Takes a photograph out of the hand. @throws ProblemError or NotTaken when it must stay there */
export type Deliver = (photograph: InHand, subject: Subject) => Promise<void>

/** What makes a photograph small is loaded when one is taken. @throws NotTaken */
async function shrinking(): Promise<typeof Shrink> {
  try {
    return await import('./shrink.ts')
  } catch {
    throw new NotTaken('Photographs cannot be taken here without the network yet: reload the page when it is back.')
  }
}

/** Straight to the service. */
const overTheNetwork: Deliver = async ({ id, key, picture }, { jobId, ...subject }) => {
  const data = await (await shrinking()).base64Of(picture)
  await call(keepPhotograph, { params: { id: jobId }, body: { id, ...subject, data } }, { key })
}

/** Photographs chosen here and not delivered yet. What cannot be delivered stays in hand, and says why. */
export class PhotographTray {
  inHand = $state.raw<readonly InHand[]>([])
  problem = $state.raw<ProblemError | NotTaken>()
  sending = $state(false)
  readonly #deliver: Deliver

  constructor(deliver: Deliver = overTheNetwork) {
    this.#deliver = deliver
  }

  async add(files: Iterable<File>): Promise<void> {
    this.problem = undefined
    for (const file of files) {
      try {
        const picture = await (await shrinking()).shrink(file)
        this.inHand = [...this.inHand, { id: newId(), key: newId(), picture }]
      } catch (error) {
        if (!(error instanceof NotTaken)) throw error
        this.problem = error
      }
    }
  }

  remove(id: string): void {
    this.inHand = this.inHand.filter((one) => one.id !== id)
  }

  /** Delivers all that are in hand, one after the other; answers whether none is left. */
  async send(subject: Subject): Promise<boolean> {
    if (this.sending) return false
    this.sending = true
    this.problem = undefined
    try {
      for (const photograph of this.inHand) {
        await this.#deliver(photograph, subject)
        this.remove(photograph.id)
      }
      return true
    } catch (error) {
      this.problem = error instanceof ProblemError || error instanceof NotTaken ? error : noNetwork()
      return false
    } finally {
      this.sending = false
    }
  }
}
