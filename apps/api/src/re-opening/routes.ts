import { listReOpenedSignatures, seeReOpenedSignatures } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { command } from '../commands/command.ts'
import { allow } from '../http/guard.ts'
import { register } from '../http/register.ts'
import { readReOpened, seeReOpened } from './re-opened-signatures.ts'

/** What people are told of their own signatures that somebody else's change opened again. */
export function reOpeningRoutes(app: FastifyInstance): void {
  register(app, listReOpenedSignatures, async ({ person, shop }) => {
    allow(person, listReOpenedSignatures.who)
    return { reOpenings: await readReOpened(shop.pool, person.id) }
  })

  command(app, seeReOpenedSignatures, async ({ client, person }, { body }) => {
    await seeReOpened(client, person.id, body.signOffIds)
    return {}
  })
}
