import {
  decideFinding as decideFindingRoute, listFindings, raiseFinding as raiseFindingRoute,
} from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { command } from '../commands/command.ts'
import { register } from '../http/register.ts'
import { decideFinding } from './decide-finding.ts'
import { loadFindings } from './load-findings.ts'
import { raiseFinding } from './raise-finding.ts'

/** What the owner is asked to decide. */
export function findingRoutes(app: FastifyInstance): void {
  register(app, listFindings, async (_context, { query }) => ({
    findings: await loadFindings(app.shop.pool, { state: query.state }),
  }))
  command(app, raiseFindingRoute, raiseFinding)
  command(app, decideFindingRoute, decideFinding)
}
