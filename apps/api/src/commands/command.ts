import type { RouteDefinition } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import type { PoolClient } from 'pg'
import { insertEvent, type NewEvent } from '../events/insert-event.ts'
import { allow } from '../http/guard.ts'
import { mount, type Answer, type Input } from '../http/register.ts'
import type { SignedIn } from '../people/sessions.ts'
import type { Shop } from '../shop.ts'
import { claimKey, keepAnswer, keptAnswer, readKey, type KeyedRequest } from './idempotency.ts'
import { hashOfInput } from './input-hash.ts'
import { readIfMatch } from './if-match.ts'
import { routeName } from './route-name.ts'
import { inTransaction } from '../database/transaction.ts'

/** Who calls, before anything is begun. */
export interface Caller {
  readonly shop: Shop
  readonly person: SignedIn
  /** The bench device the session belongs to; null for a browser. */
  readonly deviceId: string | null
  readonly now: Date
}

/** What an effect may use. `client` is inside the one transaction; `announce` says what the one event is about. */
export interface CommandContext extends Caller {
  readonly client: PoolClient
  announce(event: NewEvent): void
}

export type CommandInput<R extends RouteDefinition> = Pick<Input<R>, 'params' | 'body'> & {
  /** Version from If-Match; null when the caller sent none. */
  readonly ifMatch: number | null
}

export interface CommandSettings<R extends RouteDefinition> {
  /** Runs before the transaction, at replays too: what must persist although the command fails (wrong PINs). */
  readonly before?: (caller: Caller, input: CommandInput<R>) => Promise<void>
  /** Adds at each answering what must not lie in the stored answer (a status link's token). */
  readonly complete?: (shop: Shop, stored: Answer<R>) => Promise<Answer<R>>
  /** Most bytes of a body, where the usual limit is too little. */
  readonly bodyLimit?: number
}

/**
 * Registers a route that changes things. In this order: the audience, the input, the idempotency key; then one
 * transaction with the key, the effect, exactly one event and the stored answer; then the announcement. A failure
 * leaves nothing behind. The same key again is answered from what is stored, with `idempotent-replay: true`.
 */
export function command<R extends RouteDefinition>(
  app: FastifyInstance,
  route: R,
  effect: (context: CommandContext, input: CommandInput<R>) => Promise<Answer<R>>,
  settings: CommandSettings<R> = {},
): void {
  mount(app, route, 'command', async ({ shop, person, request, reply }, { params, body }) => {
    allow(person, route.who)
    const input = { params, body, ifMatch: readIfMatch(request.headers['if-match']) }
    const keyed: KeyedRequest = {
      key: readKey(request.headers['idempotency-key']),
      principal: person.id,
      route: `${route.method} ${request.url.split('?', 1)[0]}`,
      bodyHash: hashOfInput(input),
      status: route.status,
    }
    const caller: Caller = { shop, person, deviceId: person.deviceId, now: shop.now() }
    await settings.before?.(caller, input)

    const { stored, isReplay } = await inTransaction(shop.pool, async (client) => {
      if (!(await claimKey(client, keyed))) return { stored: await keptAnswer(client, keyed), isReplay: true }
      const events: NewEvent[] = []
      const answer = await effect({ ...caller, client, announce: (event) => void events.push(event) }, input)
      const listed = route.answer.parse(answer)
      await insertEvent(client, oneEvent(events, route), person.id)
      await keepAnswer(client, keyed, listed)
      return { stored: listed, isReplay: false }
    })

    if (isReplay) void reply.header('idempotent-replay', 'true')
    else shop.announcer.announce()
    return settings.complete === undefined ? (stored as Answer<R>) : settings.complete(shop, stored as Answer<R>)
  }, settings.bodyLimit === undefined ? {} : { bodyLimit: settings.bodyLimit })
}

/** The one event of a command; without words of its own it is called after its route. */
function oneEvent(events: readonly NewEvent[], route: RouteDefinition): NewEvent {
  if (events.length > 1) throw new Error(`${route.method} ${route.path} announced more than one event.`)
  return events[0] ?? { kind: routeName(route) }
}
