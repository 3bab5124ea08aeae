import type { readStatus as contract } from '@tenths/contract'
import type { z } from 'zod'
import type { Queryable } from '../database/queryable.ts'
import { ServiceError } from '../http/problem.ts'
import { hashOfToken } from './links.ts'

type Status = z.infer<(typeof contract)['answer']>

interface Row {
  jobId: string
  shopName: string
  timeZone: string
  jobNumber: number
  engineName: string
  promisedOn: string
  isHandedOver: boolean
  sealHead: string
}

/**
 * What a customer sees behind their link: how far the job is and what the shop chose to say. No name, no price, nobody
 * else. An unknown, a lapsed and a revoked link are one and the same to the caller.
 * @throws ServiceError `not-found`
 */
export async function readStatus(database: Queryable, token: string, now: Date): Promise<Status> {
  const { rows } = await database.query<Row>(
    `SELECT job.id AS "jobId", shop.name AS "shopName", shop.time_zone AS "timeZone", job.number AS "jobNumber", engine.name AS "engineName",
            job.promised_on AS "promisedOn", job.state = 'handed-over' AS "isHandedOver", job.seal_head AS "sealHead"
     FROM shop, status_link
     JOIN job ON job.id = status_link.job_id
     JOIN engine ON engine.id = job.engine_id
     WHERE status_link.token_hash = $1 AND status_link.revoked_at IS NULL AND status_link.expires_at > $2`,
    [hashOfToken(token), now],
  )
  const row = rows[0]
  if (row === undefined) throw new ServiceError('not-found', 'This link shows nothing any more. Ask the shop for a new one.')
  const { jobId, isHandedOver, ...job } = row
  const stages = await readStages(database, jobId)
  const operations = stages.reduce((sum, stage) => sum + stage.operations, 0)
  const signed = stages.reduce((sum, stage) => sum + stage.signed, 0)
  return {
    ...job,
    stage: stages.find((stage) => stage.signed < stage.operations)?.stage ?? null,
    stages,
    percent: operations === 0 ? 0 : Math.floor((100 * signed) / operations),
    finished: isHandedOver,
    notes: await readNotes(database, jobId),
    asOf: now.toISOString(),
  }
}

async function readStages(database: Queryable, jobId: string): Promise<Status['stages']> {
  const { rows } = await database.query<Status['stages'][number]>(
    `SELECT stage, count(*)::int AS operations, (count(*) FILTER (WHERE state = 'signed'))::int AS signed
     FROM operation_state WHERE job_id = $1 GROUP BY stage ORDER BY min(ordinal)`,
    [jobId],
  )
  return rows
}

async function readNotes(database: Queryable, jobId: string): Promise<Status['notes']> {
  const { rows } = await database.query<{ text: string; written_at: Date }>(
    `SELECT text, written_at FROM customer_note WHERE job_id = $1 AND withdrawn_at IS NULL ORDER BY written_at, id`,
    [jobId],
  )
  return rows.map(({ text, written_at }) => ({ text, writtenAt: written_at.toISOString() }))
}
