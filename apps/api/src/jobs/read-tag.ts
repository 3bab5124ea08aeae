import { tagPath, type readPartTags as partTagsContract, type readTag as contract } from '@tenths/contract'
import QRCode from 'qrcode'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'
import { ServiceError } from '../http/problem.ts'
import { findJob } from '../judging/find-job.ts'
import { readJobParts } from './job-parts.ts'

type Tag = z.infer<(typeof contract)['answer']>
type PartTags = z.infer<(typeof partTagsContract)['answer']>

/**
 * What is printed on the tag that hangs on the engine. Its code leads to the job's own page, which needs a sign-in:
 * whoever finds a tag learns nothing from it that is not printed.
 * @throws ServiceError `not-found`
 */
export async function readTag(database: Queryable, number: number, base: string): Promise<Tag> {
  const { rows: [job] } = await database.query<Omit<Tag, 'address' | 'qr'>>(
    `SELECT job.number, customer.name AS "customerName", engine.name AS "engineName", job.promised_on AS "promisedOn"
     FROM job
     JOIN customer ON customer.id = job.customer_id
     JOIN engine ON engine.id = job.engine_id
     WHERE job.number = $1`,
    [number],
  )
  if (job === undefined) throw new ServiceError('not-found', `There is no job ${number}.`)
  return { ...job, ...(await codeOf(base, number)) }
}

/** The tags of a job's parts, those that sit in a place and those that were taken out. @throws ServiceError `not-found` */
export async function readPartTags(database: Queryable, number: number, base: string): Promise<PartTags> {
  const { id } = await findJob(database, { number })
  const parts = await readJobParts(database, id)
  return {
    parts: await Promise.all(parts.map(async ({ mark, kind, place }) => ({ mark, kind, place, ...(await codeOf(base, number, mark)) }))),
  }
}

async function codeOf(base: string, number: number, mark: string | null = null): Promise<{ address: string; qr: string }> {
  const address = base + tagPath(number, mark)
  return { address, qr: await QRCode.toString(address, { type: 'svg', margin: 0 }) }
}
