import { recordInspections as recordRoute } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { command } from '../commands/command.ts'
import { recordInspections } from './record-inspections.ts'

/** Results of crack and pressure tests. */
export function inspectionRoutes(app: FastifyInstance): void {
  command(app, recordRoute, recordInspections)
}
