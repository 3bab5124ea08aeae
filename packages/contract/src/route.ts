import { z } from 'zod'
import type { ErrorCode } from './errors.ts'

/** Roles of the people of the shop; one person may have several. */
export const roles = ['counter', 'machinist', 'owner'] as const
export type Role = (typeof roles)[number]

/** Who may call: anyone at all, or people of the shop with one of these roles. */
export type Audience = 'anyone' | readonly Role[]

export interface RouteDefinition<
  Params extends z.ZodType = z.ZodType,
  Query extends z.ZodType = z.ZodType,
  Body extends z.ZodType = z.ZodType,
  Answer extends z.ZodType = z.ZodType,
> {
  readonly method: 'GET' | 'POST' | 'PUT'
  /** Path with `:names`, from the root. */
  readonly path: string
  readonly summary: string
  readonly who: Audience
  readonly params: Params
  readonly query: Query
  readonly body: Body
  /** What a success answers, and with which status. */
  readonly answer: Answer
  readonly status: 200 | 201
  /** Problems that a caller should expect, beyond those of every route. */
  readonly problems: readonly ErrorCode[]
  /** A mutation goes through `command()` and needs an Idempotency-Key header, unless it says why it is none. */
  readonly mutation: 'command' | 'none' | 'session'
}

const Nothing = z.object({})

/** Defines a route once for both sides: the API registers it, the pages call it, the documentation lists it. */
export function route<
  Answer extends z.ZodType,
  Params extends z.ZodType = typeof Nothing,
  Query extends z.ZodType = typeof Nothing,
  Body extends z.ZodType = typeof Nothing,
>(definition: {
  method: 'GET' | 'POST' | 'PUT'
  path: string
  summary: string
  who: Audience
  answer: Answer
  params?: Params
  query?: Query
  body?: Body
  status?: 200 | 201
  problems?: readonly ErrorCode[]
  mutation?: 'command' | 'none' | 'session'
}): RouteDefinition<Params, Query, Body, Answer> {
  return {
    params: Nothing as never,
    query: Nothing as never,
    body: Nothing as never,
    status: 200,
    problems: [],
    mutation: definition.method === 'GET' ? 'none' : 'command',
    ...definition,
  } as RouteDefinition<Params, Query, Body, Answer>
}

export const everyone: readonly Role[] = roles
