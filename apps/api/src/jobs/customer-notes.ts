import type { PoolClient } from 'pg'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'

export interface CustomerNote {
  readonly id: string
  readonly text: string
  readonly writtenAt: string
  readonly writtenBy: string
}

/** Puts a line on the customer's page; a closed job's too. @throws ServiceError `not-found`, `already-exists` */
export async function tellCustomer(
  client: PoolClient, jobId: string, { id, text }: { id: string; text: string }, person: { id: string; name: string },
): Promise<CustomerNote> {
  await lockJob(client, jobId, 'allowed')
  const { rows: [note] } = await client.query<{ written_at: Date }>(
    `INSERT INTO customer_note (id, job_id, text, written_by) VALUES ($1, $2, $3, $4) ON CONFLICT (id) DO NOTHING
     RETURNING written_at`,
    [id, jobId, text, person.id],
  )
  if (note === undefined) throw new ServiceError('already-exists', 'This line is on the page already.', 'id')
  return { id, text, writtenAt: note.written_at.toISOString(), writtenBy: person.name }
}

/** Takes a line off the customer's page and answers its job. @throws ServiceError `not-found` */
export async function withdrawCustomerNote(client: PoolClient, noteId: string): Promise<string> {
  const { rows: [note] } = await client.query<{ job_id: string }>(
    'UPDATE customer_note SET withdrawn_at = coalesce(withdrawn_at, now()) WHERE id = $1 RETURNING job_id', [noteId],
  )
  if (note === undefined) throw new ServiceError('not-found', 'There is no such line.')
  return note.job_id
}
