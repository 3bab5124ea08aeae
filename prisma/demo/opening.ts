import { listJobs, openJob, tellCustomer } from '@tenths/contract'
import type { Caller } from './client.ts'
import { Refused } from './client.ts'
import { engines } from './engines/index.ts'
import { idOf } from './identity.ts'
import type { DemoJob } from './jobs/job.ts'

/** A job as the counter opened it. */
export interface OpenedJob {
  readonly id: string
  readonly number: number
}

/**
 * The counter opens a job and tells the customer what there is to tell. A job that an earlier load opened, which was cut
 * short on another day, is found instead: its promised day stays as it was given then.
 */
export async function openDemoJob(counter: Caller, job: DemoJob, promisedOn: string): Promise<OpenedJob> {
  const id = idOf('job', job.key)
  const number = await open(counter, job, id, promisedOn)
  for (const [index, text] of job.told.entries()) {
    await counter.call(tellCustomer, { params: { id }, body: { id: idOf('note', job.key, index), text } })
  }
  return { id, number }
}

async function open(counter: Caller, job: DemoJob, id: string, promisedOn: string): Promise<number> {
  try {
    const { number } = await counter.call(openJob, {
      body: {
        id,
        customerId: idOf('customer', job.customer),
        modelId: idOf('engine', engines[job.engine].engine.name),
        serial: job.serial,
        duty: job.duty,
        work: job.work ?? 'short-block',
        wanted: job.wanted,
        notes: job.notes,
        promisedOn,
        parts: job.parts ? structuredClone(job.parts) as never : null,
        options: job.options,
        intake: job.intake.map((entry, index) => ({ id: idOf('intake', job.key, index), ...entry })),
      },
    })
    return number
  } catch (error) {
    if (!(error instanceof Refused) || error.code !== 'already-exists') throw error
    const { jobs } = await counter.call(listJobs, { query: { state: 'all', search: '', page: 1 } })
    const known = jobs.find((one) => one.id === id)
    if (known === undefined) throw error
    return known.number
  }
}
