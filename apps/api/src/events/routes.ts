import { eventStream } from '@tenths/contract'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import type { ServerResponse } from 'node:http'
import { readBenchDevice } from '../devices/device-cookie.ts'
import { guard } from '../http/guard.ts'
import { readPerson } from '../people/session-cookie.ts'
import { openHub, type Listener } from './hub.ts'

/** A line that means nothing, so that nothing on the way takes the stream for dead; the session is looked at again then. */
const SIGN_OF_LIFE_EVERY = 25_000
/** A browser that does not take this much any more is let go; it comes back with the last id it saw. */
const MOST_WAITING_BYTES = 1_000_000

/** The stream of changes. All people of the shop may see all of its jobs, so all of them are told everything. */
export function eventRoutes(app: FastifyInstance): void {
  const { pool, schema } = app.shop
  const hub = openHub(pool, schema, (error) => app.log.warn({ err: error }, 'Events could not be read; trying again.'))
  app.addHook('preClose', () => hub.close())

  app.route({
    method: eventStream.method,
    url: eventStream.path,
    exposeHeadRoute: false,
    onRequest: guardStream,
    handler: async (request, reply) => {
      reply.hijack()
      reply.raw.writeHead(200, { 'content-type': 'text/event-stream; charset=utf-8', 'x-accel-buffering': 'no' })
      reply.raw.flushHeaders()
      const listener = listenerOf(reply.raw)
      let leave = (): void => undefined
      const signsOfLife = setInterval(() => void stayOrEnd(request, reply.raw), SIGN_OF_LIFE_EVERY)
      reply.raw.on('close', () => {
        clearInterval(signsOfLife)
        leave()
      })
      try {
        leave = await hub.join(listener, positionOf(request))
        if (reply.raw.destroyed) leave()
      } catch (error) {
        request.log.warn({ err: error }, 'A stream could not begin.')
        listener.end()
      }
    },
  })
}

function listenerOf(response: ServerResponse): Listener {
  return {
    send(event, id, data) {
      if (response.writableLength > MOST_WAITING_BYTES) response.destroy()
      else response.write(`id: ${id}\nevent: ${event}\ndata: ${JSON.stringify(data ?? {})}\n\n`)
    },
    end: () => void response.end(),
  }
}

/** The last id that the browser saw, by header or by `?after=`. */
function positionOf(request: FastifyRequest): string | null {
  const header = request.headers['last-event-id']
  if (typeof header === 'string' && header !== '') return header
  const { after } = request.query as { after?: unknown }
  return typeof after === 'string' && after !== '' ? after : null
}

const guardPeople = guard(eventStream.who)

/** A bench device that nobody has in hand follows its queue too: an event says where to look and nothing of what is there. */
async function guardStream(request: FastifyRequest): Promise<void> {
  if ((await readBenchDevice(request)) === null) await guardPeople(request)
}

/** Whoever signed out or left the shop meanwhile is told no more, nor a device that was revoked. */
async function stayOrEnd(request: FastifyRequest, response: ServerResponse): Promise<void> {
  try {
    if ((await readPerson(request)) === null && (await readBenchDevice(request)) === null) response.end()
    else response.write(': still here\n\n')
  } catch {
    // The database does not answer at the moment: the next sign of life looks again.
    response.write(': still here\n\n')
  }
}
