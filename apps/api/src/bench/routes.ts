import {
  addPart as addPartRoute, checkZero as checkZeroRoute, observe as observeRoute, placeParts as placePartsRoute,
  readOperation as readOperationRoute,
  signOff as signOffRoute, startWork, takeReadings as takeReadingsRoute,
} from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { command } from '../commands/command.ts'
import { inSnapshot } from '../database/transaction.ts'
import { allow } from '../http/guard.ts'
import { register } from '../http/register.ts'
import { addPart, placeParts } from '../parts/place-parts.ts'
import { checkZero } from './check-zero.ts'
import { observe } from './observe.ts'
import { readOperation } from './read-operation.ts'
import { checkSignatures, signOff } from './sign-off.ts'
import { takeReadings } from './take-readings.ts'
import { runClock } from './work-time.ts'

/** What is done at a bench: one step read, measured, seen, timed and signed; parts put in their places. */
export function operationRoutes(app: FastifyInstance): void {
  register(app, readOperationRoute, ({ person }, { params }) => {
    allow(person, readOperationRoute.who)
    return inSnapshot(app.shop.pool, (client) => readOperation(client, { ...params, personId: person.id }))
  })
  command(app, takeReadingsRoute, takeReadings)
  command(app, checkZeroRoute, checkZero)
  command(app, observeRoute, observe)
  command(app, startWork, runClock)
  command(app, signOffRoute, signOff, { before: checkSignatures })
  command(app, placePartsRoute, placeParts)
  command(app, addPartRoute, addPart)
}
