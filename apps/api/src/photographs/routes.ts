import { everyone, keepPhotograph as keepRoute, listPhotographs } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import { command } from '../commands/command.ts'
import { guard } from '../http/guard.ts'
import { ServiceError } from '../http/problem.ts'
import { register } from '../http/register.ts'
import { findJob } from '../judging/find-job.ts'
import { keepPhotograph } from './keep-photograph.ts'
import { loadPhotographs } from './load-photographs.ts'

/** Base64 of the largest photograph, and the rest of the body. */
const LARGEST_BODY = 2_200_000

/** Photographs of what was found, seen, tested or received: kept once, never changed, shown to people of the shop. */
export function photographRoutes(app: FastifyInstance): void {
  const { pool } = app.shop

  command(app, keepRoute, keepPhotograph, { bodyLimit: LARGEST_BODY })

  register(app, listPhotographs, async (_context, { params }) => {
    const { id } = await findJob(pool, { number: params.number })
    return { photographs: await loadPhotographs(pool, { jobId: id }) }
  })

  // Not JSON, so not in the contract: the bytes of one photograph, for the same people.
  app.get('/api/photographs/:id', { onRequest: guard(everyone) }, async (request, reply) => {
    const params = z.object({ id: z.uuid() }).safeParse(request.params)
    if (!params.success) throw nothingThere()
    const { rows: [photograph] } = await pool.query<{ mediaType: string; bytes: Buffer; sha256: string }>(
      'SELECT media_type AS "mediaType", bytes, sha256 FROM photograph WHERE id = $1', [params.data.id],
    )
    if (photograph === undefined) throw nothingThere()
    // It never changes; whether the reader is still signed in is asked each time.
    void reply.raw.setHeader('cache-control', 'private, no-cache')
    void reply.header('etag', `"${photograph.sha256}"`)
    if (request.headers['if-none-match'] === `"${photograph.sha256}"`) return reply.code(304).send()
    return reply.type(photograph.mediaType).send(photograph.bytes)
  })
}

function nothingThere(): ServiceError {
  return new ServiceError('not-found', 'There is no such photograph.')
}
