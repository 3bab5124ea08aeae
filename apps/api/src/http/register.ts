import type { RouteDefinition } from '@tenths/contract'
import type { FastifyInstance, FastifyReply, FastifyRequest, RouteShorthandOptions } from 'fastify'
import type { z } from 'zod'
import type { SignedIn } from '../people/sessions.ts'
import type { Shop } from '../shop.ts'
import { guard } from './guard.ts'
import { InputError } from './problem.ts'
import { sayIssue } from './say-issue.ts'

/** What a handler is given beside its input. `person` is null on routes that anyone may call. */
export interface RequestContext {
  readonly shop: Shop
  readonly person: SignedIn | null
  readonly request: FastifyRequest
  readonly reply: FastifyReply
}

/** Validated input of a route. */
export interface Input<R extends RouteDefinition> {
  readonly params: z.output<R['params']>
  readonly query: z.output<R['query']>
  readonly body: z.output<R['body']>
}

export type Answer<R extends RouteDefinition> = z.input<R['answer']>
export type Handler<R extends RouteDefinition> = (context: RequestContext, input: Input<R>) => Promise<Answer<R>>
/** How a route changes things: through `command()`, by its session alone, or not at all. */
export type Through = RouteDefinition['mutation']
export type RouteSettings = Pick<RouteShorthandOptions, 'preHandler' | 'bodyLimit'>

/**
 * Registers a route that reads, or whose only effect is the caller's session. The audience is checked before
 * the body is read; params, query and body are validated; the answer is cut down to what the contract lists.
 * @throws Error for a route that the contract calls a command: those go through `command()`.
 */
export function register<R extends RouteDefinition>(
  app: FastifyInstance, route: R, handler: Handler<R>, settings: RouteSettings = {},
): void {
  if (route.mutation === 'command') throw new Error(`${route.method} ${route.path} changes things and needs command().`)
  mount(app, route, route.mutation, handler, settings)
}

/** The common part of `register()` and `command()`; nothing else calls it. */
export function mount<R extends RouteDefinition>(
  app: FastifyInstance, route: R, through: Through, handler: Handler<R>, settings: RouteSettings = {},
): void {
  app.route({
    ...settings,
    config: { contract: route, through },
    method: route.method,
    url: route.path,
    onRequest: guard(route.who),
    handler: async (request, reply) => {
      const context = { shop: app.shop, person: request.person, request, reply }
      return send(reply, route, await handler(context, readInput(route, request)))
    },
  })
}

function readInput<R extends RouteDefinition>(route: R, request: FastifyRequest): Input<R> {
  return {
    params: validate(route.params, request.params) as z.output<R['params']>,
    query: validate(route.query, request.query) as z.output<R['query']>,
    body: validate(route.body, request.body ?? {}) as z.output<R['body']>,
  }
}

function validate(schema: z.ZodType, value: unknown): unknown {
  const result = schema.safeParse(value, { error: sayIssue })
  if (!result.success) throw new InputError(result.error)
  return result.data
}

/** Answers with what the contract lists and nothing else; a `version` travels as ETag too, for If-Match. */
function send(reply: FastifyReply, route: RouteDefinition, answer: unknown): FastifyReply {
  const listed = route.answer.parse(answer)
  if (hasVersion(listed)) void reply.header('etag', `"${listed.version}"`)
  return reply.code(route.status).send(listed)
}

function hasVersion(answer: unknown): answer is { version: number } {
  return typeof answer === 'object' && answer !== null && 'version' in answer && typeof answer.version === 'number'
}

declare module 'fastify' {
  interface FastifyContextConfig {
    /** The contract's route, and how it changes things: a test looks at every registered one. */
    contract?: RouteDefinition
    through?: Through
  }
}
