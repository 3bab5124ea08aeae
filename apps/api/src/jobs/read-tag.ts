import type { readTag as contract } from '@tenths/contract'
import QRCode from 'qrcode'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'
import { ServiceError } from '../http/problem.ts'

type Tag = z.infer<(typeof contract)['answer']>

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
  const address = `${base}/jobs/${number}`
  return { ...job, address, qr: await QRCode.toString(address, { type: 'svg', margin: 0 }) }
}
