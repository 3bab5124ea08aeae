import { findLots as findLotsRoute, setLots as setLotsRoute } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { command } from '../commands/command.ts'
import { allow } from '../http/guard.ts'
import { register } from '../http/register.ts'
import { findLots } from './find-lots.ts'
import { setLots } from './set-lots.ts'

/** Lots and serials of what goes into an engine, and where a lot went. */
export function lotRoutes(app: FastifyInstance): void {
  command(app, setLotsRoute, setLots)
  register(app, findLotsRoute, ({ person }, { query }) => {
    allow(person, findLotsRoute.who)
    return findLots(app.shop.pool, query.search)
  })
}
