import type { PoolClient } from 'pg'
import { checkChain } from './check-chain.ts'
import { checkDecisions } from './check-decisions.ts'
import { checkPlans } from './check-plans.ts'
import { checkProjection } from './check-projection.ts'
import { checkSignOffs } from './check-sign-offs.ts'
import type { Fault } from './fault.ts'
import { openSeal } from './opened-seal.ts'
import { loadStoredJob } from './stored-job.ts'

/** What was found of one job; sound when there is no fault. */
export interface JobReport {
  readonly number: number
  readonly seals: number
  readonly head: string
  readonly faults: readonly Fault[]
}

/**
 * Checks one job: its chain, what each seal says against the rows it speaks of, and every verdict from its
 * readings.
 */
export async function verifyJob(client: PoolClient, jobId: string): Promise<JobReport> {
  const faults: Fault[] = []
  const blame = (step: string | null, sentence: string) => void faults.push({ step, sentence })
  const job = await loadStoredJob(client, jobId)
  const opened = job.seals.map(openSeal).filter((seal) => seal !== null)
  checkChain(job, opened, blame)
  checkPlans(job, opened, await loadKeptHashes(client, jobId), blame)
  checkSignOffs(job, opened, blame)
  checkDecisions(job, opened, blame)
  try {
    await checkProjection(client, jobId, blame)
  } catch (error) {
    blame(null, `it cannot be judged again: ${error instanceof Error ? error.message : String(error)}`)
  }
  return { number: job.number, seals: job.seals.length, head: job.sealHead, faults }
}

async function loadKeptHashes(client: PoolClient, jobId: string): Promise<Map<string, string>> {
  const { rows } = await client.query<{ key: string; hash: string }>(
    'SELECT operation_key AS key, definition_hash AS hash FROM operation_state WHERE job_id = $1', [jobId],
  )
  return new Map(rows.map(({ key, hash }) => [key, hash]))
}
