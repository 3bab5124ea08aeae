import {
  addPerson, changeMyPin, listPeople, listPinLocks, setUpShop, signIn, signOut, unlockPin, whoAmI,
} from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { pauseWork } from '../bench/work-time.ts'
import { command } from '../commands/command.ts'
import { inTransaction } from '../database/transaction.ts'
import { readBenchDevice } from '../devices/device-cookie.ts'
import { insertEvent } from '../events/insert-event.ts'
import { allow } from '../http/guard.ts'
import { register } from '../http/register.ts'
import { changePin } from './change-pin.ts'
import { insertPerson } from './insert-person.ts'
import { listColleagues } from './list-colleagues.ts'
import { endSession, readPerson, startSession } from './session-cookie.ts'
import { setUp } from './set-up.ts'
import * as locks from './pin-locks.ts'
import { checkSignIn } from './sign-in.ts'
import { limitSignIns } from './sign-in-limit.ts'
import { readSignedInPerson } from './signed-in-person.ts'

/** People: who they are, who is signed in, how the first one gets in. */
export function peopleRoutes(app: FastifyInstance): void {
  const { pool, secrets } = app.shop

  // Sign-in, sign-out and set-up have no signed-in person to bind an idempotency key to: they go round command().
  register(app, signIn, async ({ request, reply }, { body }) => {
    const personId = await checkSignIn(pool, body.signInName, body.password)
    await startSession(request, reply, personId)
    return readSignedInPerson(pool, personId, (await readBenchDevice(request))?.id ?? null)
  }, { preHandler: limitSignIns(app) })

  register(app, signOut, async ({ shop, request, reply }) => {
    const leaving = await readPerson(request)
    if (leaving !== null) {
      // Nobody works at a bench that is left behind.
      await inTransaction(pool, async (client) => {
        await pauseWork(client, [leaving.id])
        await insertEvent(client, { kind: 'sign-out' }, leaving.id)
      })
      shop.announcer.announce()
    }
    await endSession(request, reply)
    return {}
  })

  register(app, setUpShop, async ({ shop, request, reply }, { body }) => {
    const ownerId = await inTransaction(pool, (client) => setUp(client, body, secrets.pinPepper, shop.now()))
    await startSession(request, reply, ownerId)
    return readSignedInPerson(pool, ownerId, null)
  }, { preHandler: limitSignIns(app) })

  register(app, whoAmI, async ({ person }) => {
    allow(person, whoAmI.who)
    return readSignedInPerson(pool, person.id, person.deviceId)
  })

  register(app, listPeople, async ({ shop }) => ({ people: await listColleagues(shop.prisma) }))

  command(app, addPerson, async ({ client }, { body }) => {
    await insertPerson(client, body, secrets.pinPepper)
    return { id: body.id, name: body.name, roles: [...new Set(body.roles)].sort(), hasPin: body.pin !== null }
  })

  command(app, changeMyPin, async ({ client, person }, { body }) => {
    await changePin(client, person.id, body, secrets.pinPepper)
    return {}
  })

  register(app, listPinLocks, async ({ shop }) => ({ locks: await locks.listPinLocks(pool, shop.now()) }))

  command(app, unlockPin, async ({ client }, { params, body }) => {
    await locks.unlockPin(client, params.id, body.device)
    return {}
  })
}
