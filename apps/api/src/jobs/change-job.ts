import type { PoolClient } from 'pg'
import { requireVersion } from '../commands/if-match.ts'
import { lockJob } from '../commands/job-lock.ts'

export interface JobChange {
  readonly promisedOn: string
  readonly wanted: string
  readonly notes: string
}

/**
 * Changes what was promised and wished.
 * @throws ServiceError `not-found`, `job-closed`, `version-missing`, `edit-stale`
 */
export async function changeJob(
  client: PoolClient, jobId: string, { promisedOn, wanted, notes }: JobChange, ifMatch: number | null,
): Promise<{ version: number }> {
  const job = await lockJob(client, jobId)
  requireVersion(ifMatch, job.version)
  await client.query(
    'UPDATE job SET promised_on = $2, wanted = $3, notes = $4, version = version + 1 WHERE id = $1',
    [jobId, promisedOn, wanted, notes],
  )
  return { version: job.version + 1 }
}
