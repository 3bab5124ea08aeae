import type { FastifyInstance } from 'fastify'
import { operationRoutes } from './bench/routes.ts'
import { benchRoutes } from './benches/routes.ts'
import { customerRoutes } from './customers/routes.ts'
import { deskRoutes } from './desk/routes.ts'
import { deviceRoutes } from './devices/routes.ts'
import { engineRoutes } from './engines/routes.ts'
import { eventRoutes } from './events/routes.ts'
import { findingRoutes } from './findings/routes.ts'
import { gaugeRoutes } from './gauges/routes.ts'
import { healthRoutes } from './health/routes.ts'
import { inspectionRoutes } from './inspections/routes.ts'
import { ServiceError } from './http/problem.ts'
import { jobRoutes } from './jobs/routes.ts'
import { lotRoutes } from './lots/routes.ts'
import { pendingRoutes } from './pending/routes.ts'
import { peopleRoutes } from './people/routes.ts'
import { photographRoutes } from './photographs/routes.ts'
import { planRoutes } from './plans/routes.ts'
import { plausibilityRoutes } from './plausibility/routes.ts'
import { reOpeningRoutes } from './re-opening/routes.ts'
import { recordRoutes } from './record/routes.ts'
import { statusRoutes } from './status/routes.ts'
import { trialFitRoutes } from './trial-fit/routes.ts'

/** Everything below /api, and a 404 of its own: an unknown address there must not answer a page. */
export async function apiRoutes(app: FastifyInstance): Promise<void> {
  // A form of another site can send text; only a script of ours sends JSON.
  app.removeContentTypeParser('text/plain')
  await healthRoutes(app)
  peopleRoutes(app)
  deviceRoutes(app)
  customerRoutes(app)
  engineRoutes(app)
  gaugeRoutes(app)
  benchRoutes(app)
  jobRoutes(app)
  planRoutes(app)
  plausibilityRoutes(app)
  operationRoutes(app)
  inspectionRoutes(app)
  lotRoutes(app)
  photographRoutes(app)
  pendingRoutes(app)
  trialFitRoutes(app)
  reOpeningRoutes(app)
  findingRoutes(app)
  recordRoutes(app)
  deskRoutes(app)
  statusRoutes(app)
  eventRoutes(app)
  app.all('/api/*', () => {
    throw new ServiceError('not-found', 'There is nothing at this address.')
  })
}
