import { handOver as handOverRoute, readBuildRecord, reopenJob as reopenJobRoute } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { z } from 'zod'
import { command } from '../commands/command.ts'
import { guard } from '../http/guard.ts'
import { ServiceError } from '../http/problem.ts'
import { register } from '../http/register.ts'
import { readRecord } from './build-record.ts'
import { handOver, reopenJob } from './hand-over.ts'
import { recordPdf } from './pdf/record-pdf.ts'

const PdfParams = z.object({ number: z.coerce.number().int() })
const PdfQuery = z.object({ paper: z.enum(['a4', 'letter']).optional() })

/** The build record, on a page and on paper; handing a job over and opening it again. */
export function recordRoutes(app: FastifyInstance): void {
  const { pool } = app.shop

  register(app, readBuildRecord, ({ shop }, { params }) => readRecord(pool, params.number, shop.now()))

  // Not JSON, so not in the contract: the same record for the same people, on paper.
  app.get(`${readBuildRecord.path}.pdf`, {
    onRequest: guard(readBuildRecord.who),
  }, async (request, reply) => {
    const params = PdfParams.safeParse(request.params)
    const query = PdfQuery.safeParse(request.query)
    if (!params.success || !query.success) throw new ServiceError('not-found', 'There is no such record.')
    const record = await readRecord(pool, params.data.number, app.shop.now())
    const paper = query.data.paper ?? (record.unit === 'inch' ? 'letter' : 'a4')
    return reply
      .type('application/pdf')
      .header('content-disposition', `inline; filename="build-record-${record.job.number}.pdf"`)
      .header('cache-control', 'no-store')
      .send(recordPdf(record, paper))
  })

  command(app, handOverRoute, handOver)
  command(app, reopenJobRoute, reopenJob)
}
