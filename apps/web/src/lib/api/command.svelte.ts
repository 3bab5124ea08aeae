import type { RouteDefinition } from '@tenths/contract'
import { call, newId, type AnswerOf, type CallInput } from './call.ts'
import { noNetwork, ProblemError } from './problem.ts'

/** One thing that a person does, with what became of it. */
export interface Command<R extends RouteDefinition> {
  readonly sending: boolean
  readonly problem: ProblemError | undefined
  /** The sentence that belongs at a field, if the last answer blamed it. */
  at(field: string): string | undefined
  /** The answer, or nothing when it was refused: `problem` then says why. */
  send(input: CallInput<R>, settings?: { ifMatch?: number }): Promise<AnswerOf<R> | undefined>
  forget(): void
}

/**
 * A command of a page. The same content sent again (a second press, a retry after the network came back) carries the
 * same key, so it has one effect; other content is another intention and gets another key.
 */
export function command<R extends RouteDefinition>(route: R): Command<R> {
  let sending = $state(false)
  let problem = $state.raw<ProblemError>()
  let intention = { content: '', key: '' }

  function keyFor(input: CallInput<R>): string {
    const content = JSON.stringify(input)
    if (content !== intention.content) intention = { content, key: newId() }
    return intention.key
  }

  return {
    get sending() { return sending },
    get problem() { return problem },
    at: (field) => problem?.fields[field],
    async send(input, settings = {}) {
      if (sending) return undefined
      sending = true
      problem = undefined
      try {
        const answer = await call(route, input, { ...settings, key: keyFor(input) })
        intention = { content: '', key: '' }
        return answer
      } catch (error) {
        problem = error instanceof ProblemError ? error : noNetwork()
        return undefined
      } finally {
        sending = false
      }
    },
    forget() { problem = undefined },
  }
}
