import { makeStatusLink, readStatus, revokeStatusLink } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { command } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import { register } from '../http/register.ts'
import { isLoopback, limitStatus } from './limit.ts'
import * as links from './links.ts'
import * as read from './read-status.ts'

/** The customer's page and the links to it. */
export function statusRoutes(app: FastifyInstance): void {
  const { pool, secrets } = app.shop
  const limit = limitStatus(app)

  register(app, readStatus, ({ shop }, { params }) => read.readStatus(pool, params.token, shop.now()), {
    preHandler: async (request) => {
      if (!isLoopback(request.ip)) await limit(request)
    },
  })

  command(app, makeStatusLink, async ({ client, person, announce }, { params }) => {
    const job = await lockJob(client, params.id, 'allowed')
    announce({ kind: 'make-status-link', jobId: job.id })
    const { id } = await links.createStatusLink(client, { jobId: job.id, personId: person.id, key: secrets.statusLinkKey })
    return { id, path: '' }
  }, {
    // The path opens the page: it is worked out anew at each answering and lies in no table.
    complete: async (_shop, stored) => ({ ...stored, path: await links.readPath(pool, stored.id, secrets.statusLinkKey) }),
  })

  command(app, revokeStatusLink, async ({ client, announce }, { params }) => {
    announce({ kind: 'revoke-status-link', jobId: await links.revokeStatusLink(client, params.id) })
    return {}
  })
}
