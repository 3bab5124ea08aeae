import type { PoolClient } from 'pg'

/** What an event is about. It says *look again*; what there is to see is read through the usual routes. */
export interface NewEvent {
  readonly kind: string
  readonly jobId?: string
  readonly operationKey?: string
}

/** Adds the one event of a command, inside its transaction. */
export async function insertEvent(client: PoolClient, event: NewEvent, personId: string | null): Promise<void> {
  await client.query('INSERT INTO event (kind, job_id, operation_key, person_id) VALUES ($1, $2, $3, $4)', [
    event.kind, event.jobId ?? null, event.operationKey ?? null, personId,
  ])
}
