import {
  changeJob, listJobs, openJob, readJob, readNextStep, readPartTags, readTag, tellCustomer, withdrawCustomerNote,
} from '@tenths/contract'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { command } from '../commands/command.ts'
import { allow } from '../http/guard.ts'
import { register } from '../http/register.ts'
import { readLinks } from '../status/links.ts'
import * as change from './change-job.ts'
import * as notes from './customer-notes.ts'
import { listJobs as list } from './list-jobs.ts'
import { openJob as open } from './open-job.ts'
import { readJob as read } from './read-job.ts'
import { readNextStep as nextStep } from './next-step.ts'
import * as tags from './read-tag.ts'
import { readToday } from './today.ts'

/** Jobs: opened, listed, read, changed; what their customers are told. */
export function jobRoutes(app: FastifyInstance): void {
  const { pool, secrets: { statusLinkKey } } = app.shop

  register(app, listJobs, async ({ shop }, { query }) => list(pool, query, await readToday(pool, shop.now())))

  command(app, openJob, ({ client, person, announce }, { body }) => {
    announce({ kind: 'open-job', jobId: body.id })
    return open(client, body, { personId: person.id, statusLinkKey })
  }, {
    // The path opens the customer's page: it is worked out anew at each answering and lies in no table.
    complete: async (_shop, stored) => {
      const [first] = await readLinks(pool, stored.id, statusLinkKey)
      return { ...stored, statusPath: first?.path ?? '' }
    },
  })

  register(app, readJob, async ({ shop, person }, { params }) => {
    allow(person, readJob.who)
    return read(pool, params.number, { person, today: await readToday(pool, shop.now()), statusLinkKey })
  })

  command(app, changeJob, ({ client, announce }, { params, body, ifMatch }) => {
    announce({ kind: 'change-job', jobId: params.id })
    return change.changeJob(client, params.id, body, ifMatch)
  })

  command(app, tellCustomer, ({ client, person, announce }, { params, body }) => {
    announce({ kind: 'tell-customer', jobId: params.id })
    return notes.tellCustomer(client, params.id, body, person)
  })

  command(app, withdrawCustomerNote, async ({ client, announce }, { params }) => {
    announce({ kind: 'withdraw-customer-note', jobId: await notes.withdrawCustomerNote(client, params.id) })
    return {}
  })

  /** Where the shop is found from outside, as far as this request tells. */
  const base = ({ protocol, host }: FastifyRequest): string => app.shop.origin ?? `${protocol}://${host}`
  register(app, readTag, ({ request }, { params }) => tags.readTag(pool, params.number, base(request)))
  register(app, readPartTags, ({ request }, { params }) => tags.readPartTags(pool, params.number, base(request)))
  register(app, readNextStep, (_context, { params, query }) => nextStep(pool, { ...params, mark: query.mark, bench: query.bench }))
}
