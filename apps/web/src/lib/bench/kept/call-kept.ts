import type { RouteDefinition } from '@tenths/contract'
import { address, call, type AnswerOf, type CallInput, type CallSettings } from '../../api/call.ts'
import { ProblemError } from '../../api/problem.ts'
import { foundAway } from '../../api/reach.ts'
import { oncePainted } from '../../once-painted.ts'
import { keepAnswer, keptAnswer } from './kept-answers.ts'

/** After this long without an answer what is kept is shown, in milliseconds. */
const patience = 10_000
/** The same where the call before got none: a network that swallows all that is sent never says that it is away. */
const patienceWhileAway = 2_000

/**
 * As `call`, for what is opened at a bench: each answer is kept on the device, and shown again while the server
 * cannot be reached.
 * @throws ProblemError as `call` does; `not-kept` when the server cannot be reached and nothing is kept
 */
export async function callKept<R extends RouteDefinition>(
  route: R, input: CallInput<R>, settings: CallSettings = {},
): Promise<AnswerOf<R>> {
  const { params, query } = input as { params?: Record<string, string | number>; query?: Record<string, unknown> }
  const where = address(route.path, params, query)
  const timeout = AbortSignal.timeout(foundAway() ? patienceWhileAway : patience)
  try {
    const answer = await call(route, input, { ...settings, signal: either(settings.signal, timeout) })
    // Nobody waits for the device to have written it: it is shown first.
    oncePainted(() => void keepAnswer(where, answer))
    return answer
  } catch (error) {
    if (!isAway(error)) throw error
    const kept = await keptAnswer(where)
    if (kept === undefined) throw new ProblemError('not-kept', 0, '')
    return kept as AnswerOf<R>
  }
}

/** A browser that cannot join the two gives up only when it is told to. */
function either(told: AbortSignal | undefined, timeout: AbortSignal): AbortSignal {
  if (told === undefined) return timeout
  return 'any' in AbortSignal ? AbortSignal.any([told, timeout]) : told
}

/** No answer, or one of something on the way in the service's place. */
function isAway(error: unknown): boolean {
  return error instanceof ProblemError && (error.code === 'no-network' || error.code === 'answer-unreadable')
}
