import type { Pool } from 'pg'
import { inSnapshot } from '../database/transaction.ts'
import { verifyJob, type JobReport } from './verify-job.ts'

/**
 * Checks every job in the order of their numbers, each as one moment shows it; the shop may go on working
 * meanwhile.
 */
export async function* verifyShop(pool: Pool): AsyncGenerator<JobReport> {
  const { rows } = await pool.query<{ id: string }>('SELECT id FROM job ORDER BY number')
  for (const { id } of rows) yield await inSnapshot(pool, (client) => verifyJob(client, id))
}

/** What is printed of a job: one line when it is sound, else one for each fault, with job and step. */
export function reportLines({ number, seals, head, faults }: JobReport): string[] {
  if (faults.length === 0) return [`Job ${number}: sound, ${seals} seals, head ${head}`]
  return faults.map(({ step, sentence }) => `Job ${number}${step === null ? '' : `, ${step}`}: ${sentence}`)
}
