import type { readJob as contract } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'
import { ServiceError } from '../http/problem.ts'
import type { SignedIn } from '../people/sessions.ts'
import { readLinks } from '../status/links.ts'
import { operationColumns, type WireOperation } from './job-operations.ts'
import { readJobParts } from './job-parts.ts'
import { readSummaries } from './job-summary.ts'

type WireJob = z.infer<(typeof contract)['answer']>

interface Head {
  id: string
  customer: WireJob['customer']
  serial: string
  wanted: string
  notes: string
  version: number
  planRevision: number
  sealCount: number
  sealHead: string
  openedAt: Date
  handedOverAt: Date | null
}

/**
 * One job in full, in a constant number of statements. How to reach the customer and the links to their page are the
 * counter's and the owner's to see.
 * @throws ServiceError `not-found`
 */
export async function readJob(
  database: Queryable, number: number, { person, today, statusLinkKey }: { person: SignedIn; today: string; statusLinkKey: string },
): Promise<WireJob> {
  const head = await readHead(database, number)
  const { customer, openedAt, handedOverAt, ...rest } = head
  const [summary] = await readSummaries(database, [head.id], today)
  if (summary === undefined) throw new Error('A job that was read has a summary.')
  const meetsCustomers = person.roles.some((role) => role === 'counter' || role === 'owner')
  return {
    ...summary,
    ...rest,
    customer: meetsCustomers ? customer : null,
    openedAt: openedAt.toISOString(),
    handedOverAt: handedOverAt?.toISOString() ?? null,
    route: await readRoute(database, head.id),
    parts: await readJobParts(database, head.id),
    intake: await readIntake(database, head.id),
    customerNotes: await readCustomerNotes(database, head.id),
    links: meetsCustomers ? await readLinks(database, head.id, statusLinkKey) : [],
  }
}

async function readHead(database: Queryable, number: number): Promise<Head> {
  const { rows } = await database.query<Head>(
    `SELECT job.id, engine.serial, job.wanted, job.notes, job.version, job.plan_revision AS "planRevision",
            job.seal_count AS "sealCount", job.seal_head AS "sealHead", job.opened_at AS "openedAt",
            job.handed_over_at AS "handedOverAt",
            json_build_object('id', customer.id, 'name', customer.name, 'phone', customer.phone, 'email', customer.email)
              AS customer
     FROM job
     JOIN customer ON customer.id = job.customer_id
     JOIN engine ON engine.id = job.engine_id
     WHERE job.number = $1`,
    [number],
  )
  const head = rows[0]
  if (head === undefined) throw new ServiceError('not-found', `There is no job ${number}.`)
  return head
}

async function readRoute(database: Queryable, jobId: string): Promise<WireOperation[]> {
  const { rows } = await database.query<WireOperation>(
    `SELECT ${operationColumns} FROM operation_state WHERE job_id = $1 ORDER BY ordinal`, [jobId],
  )
  return rows
}

async function readIntake(database: Queryable, jobId: string): Promise<WireJob['intake']> {
  const { rows } = await database.query<WireJob['intake'][number]>(
    `SELECT id, description, quantity, condition, owned_by AS "ownedBy"
     FROM intake_item WHERE job_id = $1 ORDER BY received_at, id`,
    [jobId],
  )
  return rows
}

async function readCustomerNotes(database: Queryable, jobId: string): Promise<WireJob['customerNotes']> {
  const { rows } = await database.query<{ id: string; text: string; writtenAt: Date; writtenBy: string }>(
    `SELECT customer_note.id, text, written_at AS "writtenAt", person.name AS "writtenBy"
     FROM customer_note JOIN person ON person.id = customer_note.written_by
     WHERE job_id = $1 AND withdrawn_at IS NULL ORDER BY written_at, customer_note.id`,
    [jobId],
  )
  return rows.map((note) => ({ ...note, writtenAt: note.writtenAt.toISOString() }))
}
