import type { RouteDefinition } from '@tenths/contract'
import { v7 as uuidv7 } from 'uuid'
import type { z } from 'zod'
import { noNetwork, problemOf } from './problem.ts'
import { noteServerClock, sayReach } from './reach.ts'

/** What a route's answer holds. */
export type AnswerOf<R extends RouteDefinition> = z.output<R['answer']>

/** What a call carries: only what its route declares is asked for. */
export type CallInput<R extends RouteDefinition> =
  & Part<'params', { [K in keyof z.output<R['params']>]: string | number }>
  & (IsNothing<z.input<R['query']>> extends true ? unknown : { query?: z.input<R['query']> })
  & Part<'body', z.input<R['body']>>

type Part<Name extends string, Shape> = IsNothing<Shape> extends true ? unknown : { [N in Name]: Shape }

/** An object schema without fields reads as an index of `never`. */
type IsNothing<Shape> = string extends keyof Shape ? true : keyof Shape extends never ? true : false

export interface CallSettings {
  /** Names one intention of the person: a repeat with the same key has one effect. Drawn anew when left out. */
  key?: string
  /** Version that was read, for an edit that must not overwrite another's. */
  ifMatch?: number
  /** Kit's fetch while a page is loaded or rendered on the server. */
  fetch?: typeof globalThis.fetch
  signal?: AbortSignal
}

interface LooseInput {
  params?: Record<string, string | number>
  query?: Record<string, unknown>
  body?: unknown
}

/**
 * Calls a route of the contract.
 * @returns its answer, as the contract types it
 * @throws ProblemError for every refusal, with code `no-network` when no answer came, or only a part of it, and with
 *   `answer-unreadable` when it was not the service that answered
 */
export async function call<R extends RouteDefinition>(
  route: R, input: CallInput<R>, settings: CallSettings = {},
): Promise<AnswerOf<R>> {
  const { params, query, body } = input as LooseInput
  const headers = new Headers({ accept: 'application/json' })
  if (route.mutation === 'command') headers.set('idempotency-key', settings.key ?? newId())
  if (settings.ifMatch !== undefined) headers.set('if-match', `"${settings.ifMatch}"`)
  const request: RequestInit = { method: route.method, headers }
  if (settings.signal) request.signal = settings.signal
  if (route.method !== 'GET') {
    headers.set('content-type', 'application/json')
    request.body = JSON.stringify(body ?? {})
  }
  const { response, answer } = await send(address(route.path, params, query), request, settings)
  if (!response.ok || answer === undefined) {
    const problem = problemOf(response.ok ? 0 : response.status, answer)
    if (problem.code === 'not-signed-in') sayReach({ signedIn: false })
    throw problem
  }
  if (route.who !== 'anyone') sayReach({ signedIn: true })
  return answer as AnswerOf<R>
}

/** A new identity: UUIDv7, so that rows lie in the order in which they were made. */
export function newId(): string {
  return uuidv7()
}

/** Path with its `:names` filled in and the query behind it; an empty or missing query value is left out. */
export function address(
  path: string, params: Record<string, string | number> = {}, query: Record<string, unknown> = {},
): string {
  const filled = path.replace(/:(\w+)/g, (_, name: string) => encodeURIComponent(String(params[name])))
  const search = new URLSearchParams()
  for (const [name, value] of Object.entries(query)) {
    if (value !== undefined && value !== '') search.set(name, String(value))
  }
  return search.size === 0 ? filled : `${filled}?${search}`
}

interface Sent {
  readonly response: Response
  /** What the service said; undefined where something on the way answered in its place. */
  readonly answer: unknown
}

async function send(url: string, request: RequestInit, settings: CallSettings): Promise<Sent> {
  try {
    const response = await (settings.fetch ?? fetch)(url, request)
    noteServerClock(response.headers.get('date'))
    const answer = await readJson(response)
    sayReach({ reached: answer !== undefined })
    return { response, answer }
  } catch (error) {
    const isGivenUp = settings.signal?.aborted === true && !isTimeout(settings.signal.reason)
    if (isGivenUp) throw error
    sayReach({ reached: false })
    throw noNetwork()
  }
}

/** Nobody waits any longer: that is the network's fault, not a person's who turned away. */
function isTimeout(reason: unknown): boolean {
  return reason instanceof DOMException && reason.name === 'TimeoutError'
}

/** Undefined for what is no JSON. @throws what `fetch` throws when the answer breaks off: half of it is none. */
async function readJson(response: Response): Promise<unknown> {
  try {
    return await response.json()
  } catch (error) {
    if (error instanceof SyntaxError) return undefined
    throw error
  }
}
