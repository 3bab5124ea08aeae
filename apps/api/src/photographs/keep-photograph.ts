import { createHash } from 'node:crypto'
import { MOST_PHOTOGRAPH_BYTES, type keepPhotograph as keepRoute } from '@tenths/contract'
import type { PoolClient } from 'pg'
import { keptAlready } from '../bench/kept-already.ts'
import { operationOf } from '../bench/reach.ts'
import { requireSamePerson } from '../bench/same-person.ts'
import type { CommandContext, CommandInput } from '../commands/command.ts'
import { lockJob } from '../commands/job-lock.ts'
import { ServiceError } from '../http/problem.ts'
import { loadPlan } from '../judging/load-evidence.ts'
import { loadPhotographs, type WirePhotograph } from './load-photographs.ts'
import { hasCameraData, mediaTypeOf, type MediaType } from './media-type.ts'

type Input = CommandInput<typeof keepRoute>

/** Keeps a photograph of something that the job knows. The same one sent twice is kept once. */
export async function keepPhotograph(
  { client, person, announce }: CommandContext, { params, body }: Input,
): Promise<WirePhotograph> {
  const jobId = params.id
  requireSamePerson(person.id, body.takenBy, 'takenBy')
  const bytes = Buffer.from(body.data, 'base64')
  const mediaType = typeOf(bytes)
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  await lockJob(client, jobId)
  await keptAlready(client, 'photograph', [body.id], { jobId, personId: person.id })
  const operationKey = await stepOf(client, jobId, body)
  announce({ kind: 'keep-photograph', jobId, ...(operationKey === null ? {} : { operationKey }) })
  const { rowCount } = await client.query(
    `INSERT INTO photograph (id, job_id, operation_key, subject, subject_key, caption, sha256, media_type, bytes, person_id,
                             device_at)
     VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)
     ON CONFLICT (id) DO NOTHING`,
    [
      body.id, jobId, operationKey, body.subject, body.subjectKey, body.caption, sha256, mediaType, bytes,
      person.id, body.deviceAt ?? null,
    ],
  )
  const [kept] = await loadPhotographs(client, { id: body.id, jobId })
  if (kept === undefined || (rowCount === 0 && kept.sha256 !== sha256)) {
    throw new ServiceError('already-exists', 'Another photograph has this id already.', 'id')
  }
  return kept
}

/** @throws ServiceError `body-invalid` for bytes that are no JPEG or WebP, too many, or with camera data in them */
function typeOf(bytes: Buffer): MediaType {
  const type = mediaTypeOf(bytes)
  if (type === null) throw new ServiceError('body-invalid', 'This is no photograph: JPEG or WebP is taken.', 'data')
  if (bytes.length > MOST_PHOTOGRAPH_BYTES) {
    throw new ServiceError('body-invalid', 'This photograph is too large: 1.5 MB at most.', 'data')
  }
  if (hasCameraData(bytes, type)) {
    throw new ServiceError(
      'body-invalid', 'This photograph still says where and with what it was taken: send it without.', 'data',
    )
  }
  return type
}

/**
 * The step that a photograph belongs to: as the finding says, or as was sent.
 * @throws ServiceError `not-found` for something that this job has not
 */
async function stepOf(client: PoolClient, jobId: string, body: Input['body']): Promise<string | null> {
  const { subject, subjectKey, operationKey } = body
  if (subject === 'finding') {
    const { rows: [finding] } = await client.query<{ operationKey: string | null }>(
      'SELECT operation_key AS "operationKey" FROM finding WHERE job_id = $1 AND id::text = $2', [jobId, subjectKey],
    )
    if (finding === undefined) throw nothingThere()
    return finding.operationKey
  }
  if (subject === 'intake-item') {
    const { rowCount } = await client.query(
      'SELECT FROM intake_item WHERE job_id = $1 AND id::text = $2', [jobId, subjectKey],
    )
    if (rowCount === 0) throw nothingThere()
    return null
  }
  const { plan } = await loadPlan(client, jobId)
  const operation = operationOf(plan, operationKey ?? '')
  const things = subject === 'observation' ? operation.observations : operation.inspections ?? []
  if (!things.some(({ key }) => key === subjectKey)) throw nothingThere()
  return operation.key
}

function nothingThere(): ServiceError {
  return new ServiceError('not-found', 'What this photograph belongs to is not there.', 'subjectKey')
}
