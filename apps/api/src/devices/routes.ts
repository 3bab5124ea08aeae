import {
  enrolDevice, handBack, listDevices, readDevice, registerDevice, renewDeviceCode, revokeDevice, takeOver,
} from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { pauseWork } from '../bench/work-time.ts'
import { readQueue } from '../benches/read-benches.ts'
import { command } from '../commands/command.ts'
import { inTransaction } from '../database/transaction.ts'
import { insertEvent } from '../events/insert-event.ts'
import { register } from '../http/register.ts'
import { readToday } from '../jobs/today.ts'
import { endSession, readPerson, startSession } from '../people/session-cookie.ts'
import { limitEnrolments } from '../people/sign-in-limit.ts'
import { readSignedInPerson } from '../people/signed-in-person.ts'
import { readBenchDevice, requireBenchDevice, setDeviceCookie } from './device-cookie.ts'
import * as enrol from './enrol-device.ts'
import { listDevices as list, oneDevice } from './list-devices.ts'
import * as devices from './register-device.ts'
import { checkTakeOver, peopleWithPin } from './take-over.ts'

/** Shared tablets: how one becomes a bench device, and whose hands it is in. */
export function deviceRoutes(app: FastifyInstance): void {
  const { pool, secrets } = app.shop

  register(app, listDevices, async ({ shop }) => ({ devices: await list(pool, shop.now()) }))

  command(app, registerDevice, async ({ client, now }, { body }) => {
    await devices.registerDevice(client, body, now)
    return oneDevice(client, now, body.id)
  })

  command(app, renewDeviceCode, async ({ client, now }, { params, body }) => {
    await devices.renewDeviceCode(client, params.id, body.secret, now)
    return oneDevice(client, now, params.id)
  })

  command(app, revokeDevice, async ({ client, now }, { params }) => {
    await devices.revokeDevice(client, params.id, now)
    return {}
  })

  // Enrolment and take-over have no signed-in person to bind an idempotency key to: they go round command().
  register(app, enrolDevice, async ({ shop, request, reply }, { body }) => {
    const { device, secret } = await inTransaction(pool, async (client) => {
      const enrolled = await enrol.enrolDevice(client, body.secret, shop.now())
      await insertEvent(client, { kind: 'enrol-device' }, null)
      return enrolled
    })
    shop.announcer.announce()
    await endSession(request, reply)
    setDeviceCookie(request, reply, secret)
    return device
  }, { preHandler: limitEnrolments(app) })

  register(app, readDevice, async ({ shop, request }) => {
    const device = await readBenchDevice(request)
    if (device === null) return { device: null, people: [], queue: [] }
    const { bench, entries } = await readQueue(pool, device.benchId, await readToday(pool, shop.now()))
    const { rows: [named] } = await pool.query<{ name: string }>('SELECT name FROM shop')
    return {
      device: { ...device, benchName: bench.name, shopName: named?.name ?? '' },
      people: await peopleWithPin(pool),
      queue: entries,
    }
  })

  register(app, takeOver, async ({ shop, request, reply }, { body }) => {
    const device = await requireBenchDevice(request)
    await checkTakeOver(pool, { ...body, device: device.id, pepper: secrets.pinPepper, now: shop.now() })
    const before = await readPerson(request)
    await startSession(request, reply, body.personId)
    await inTransaction(pool, async (client) => {
      if (before !== null && before.id !== body.personId) await pauseWork(client, [before.id])
      await insertEvent(client, { kind: 'take-over' }, body.personId)
    })
    shop.announcer.announce()
    return readSignedInPerson(pool, body.personId, device.id)
  })

  command(app, handBack, async ({ client, person }, _input) => {
    await pauseWork(client, [person.id])
    if (person.deviceId !== null) {
      await client.query('DELETE FROM session WHERE device_id = $1 AND person_id = $2', [person.deviceId, person.id])
    }
    return {}
  })
}
