import type { PoolClient } from 'pg'
import { ServiceError } from '../http/problem.ts'

/** Tables of what is done at a bench under an id that the device draws. */
type Kept = 'inspection' | 'part_lot' | 'photograph'

/**
 * Which of these ids are kept already: a repeat has no second effect, however late it comes and whatever was said since.
 * @throws ServiceError `already-exists` for an id under which somebody else or another job has something
 */
export async function keptAlready(
  client: PoolClient, table: Kept, ids: readonly string[], by: { readonly jobId: string; readonly personId: string },
): Promise<ReadonlySet<string>> {
  const { rows } = await client.query<{ id: string; jobId: string; personId: string }>(
    `SELECT id, job_id AS "jobId", person_id AS "personId" FROM ${table} WHERE id = ANY ($1)`, [ids],
  )
  if (rows.some(({ jobId, personId }) => jobId !== by.jobId || personId !== by.personId)) {
    throw new ServiceError('already-exists', 'Something else is kept under this id already.')
  }
  return new Set(rows.map(({ id }) => id))
}
