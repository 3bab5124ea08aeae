import { keepPhotograph, type photographSubjects } from '@tenths/contract'
import { call, newId } from '$lib/api/call.ts'
import { noNetwork, ProblemError } from '$lib/api/problem.ts'
import { base64Of, NoPicture, shrink } from './shrink.ts'

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
  readonly data: string
  /** Shows it on the page. */
  readonly url: string
}

/** Photographs chosen here and not sent yet. What cannot be sent stays in hand, and says why. */
export class PhotographTray {
  inHand = $state.raw<readonly InHand[]>([])
  problem = $state.raw<ProblemError | NoPicture>()
  sending = $state(false)

  async add(files: Iterable<File>): Promise<void> {
    this.problem = undefined
    for (const file of files) {
      try {
        const small = await shrink(file)
        const data = await base64Of(small)
        this.inHand = [...this.inHand, { id: newId(), key: newId(), data, url: `data:${small.type};base64,${data}` }]
      } catch (error) {
        if (!(error instanceof NoPicture)) throw error
        this.problem = error
      }
    }
  }

  remove(id: string): void {
    this.inHand = this.inHand.filter((one) => one.id !== id)
  }

  /** Sends all that are in hand, one after the other; answers whether none is left. */
  async send({ jobId, ...subject }: Subject): Promise<boolean> {
    if (this.sending) return false
    this.sending = true
    this.problem = undefined
    try {
      for (const { id, key, data } of this.inHand) {
        await call(keepPhotograph, { params: { id: jobId }, body: { id, ...subject, data } }, { key })
        this.remove(id)
      }
      return true
    } catch (error) {
      this.problem = error instanceof ProblemError ? error : noNetwork()
      return false
    } finally {
      this.sending = false
    }
  }
}
