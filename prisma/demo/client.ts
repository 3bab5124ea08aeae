import type { Problem, RouteDefinition } from '@tenths/contract'
import { signIn } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import type { z } from 'zod'
import { idOf } from './identity.ts'
import type { DemoPerson } from './people.ts'

/** What a caller gives; each part only where the route has it. */
export interface Given<R extends RouteDefinition> {
  readonly params?: z.input<R['params']>
  readonly query?: z.input<R['query']>
  readonly body?: z.input<R['body']>
}

/** Somebody signed in: calls routes as a page of the service would. */
export interface Caller {
  /** @throws Refused with the problem's code when the service refuses. */
  call<R extends RouteDefinition>(route: R, given?: Given<R>): Promise<z.output<R['answer']>>
}

/** The service said no; its code and sentence tell why. */
export class Refused extends Error {
  readonly code: Problem['code']
  readonly field: string | undefined

  constructor(route: RouteDefinition, problem: Problem) {
    super(`${route.method} ${route.path}: ${problem.code}, ${problem.detail}${problem.field ? ` (${problem.field})` : ''}`)
    this.code = problem.code
    this.field = problem.field
  }
}

type Service = Pick<FastifyInstance, 'inject'>

/** Signs a person in by name and password, and keeps the session's cookie. */
export async function signInAs(app: Service, { signInName, password }: DemoPerson): Promise<Caller> {
  const { cookies } = await send(app, signIn, { body: { signInName, password } }, undefined)
  const cookie = cookies.map(({ name, value }) => `${name}=${value}`).join('; ')
  return {
    call: async (route, given = {}) => (await send(app, route, given, { cookie, principal: signInName })).answer,
  }
}

interface Principal {
  readonly cookie: string
  readonly principal: string
}

async function send<R extends RouteDefinition>(
  app: Service, route: R, given: Given<R>, as: Principal | undefined,
): Promise<{ answer: z.output<R['answer']>; cookies: { name: string; value: string }[] }> {
  const { params, query, body } = given as { params?: Record<string, unknown>; query?: Record<string, string>; body?: object }
  const url = addressOf(route, params ?? {})
  const response = await app.inject({
    method: route.method,
    url,
    query: query ?? {},
    headers: {
      ...(as === undefined ? {} : { cookie: as.cookie }),
      // The same command by the same person has the same key: sent again after a load that was cut short, it replays.
      ...(route.mutation === 'command' && as !== undefined
        ? { 'idempotency-key': idOf('command', as.principal, route.method, url, JSON.stringify(body ?? {})) }
        : {}),
    },
    ...(route.method === 'GET' ? {} : { payload: body ?? {} }),
  })
  if (response.statusCode !== route.status) throw new Refused(route, response.json<Problem>())
  return { answer: response.json<z.output<R['answer']>>(), cookies: response.cookies }
}

function addressOf(route: RouteDefinition, params: Record<string, unknown>): string {
  return route.path.replace(/:(\w+)/g, (_whole, name: string) => encodeURIComponent(String(params[name])))
}
