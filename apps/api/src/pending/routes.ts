import {
  confirmSignOffs as confirmRoute, listPendingSignOffs, markSigned as markSignedRoute,
  putAwayPending as putAwayRoute,
} from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { command } from '../commands/command.ts'
import { allow } from '../http/guard.ts'
import { register } from '../http/register.ts'
import { checkConfirmingPin, confirmSignOffs } from './confirm-sign-offs.ts'
import { loadPending } from './load-pending.ts'
import { markSigned } from './mark-signed.ts'
import { putAwayPending } from './put-away.ts'

/** Steps that were marked as signed without a network, until their people confirm them. */
export function pendingRoutes(app: FastifyInstance): void {
  command(app, markSignedRoute, markSigned)
  register(app, listPendingSignOffs, async ({ person }) => {
    allow(person, listPendingSignOffs.who)
    return { pending: await loadPending(app.shop.pool, { signer: person.id }) }
  })
  command(app, confirmRoute, confirmSignOffs, { before: checkConfirmingPin })
  command(app, putAwayRoute, putAwayPending)
}
