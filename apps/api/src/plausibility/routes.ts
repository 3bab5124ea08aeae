import { listPlausibility, revisePlausibility } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { command } from '../commands/command.ts'
import { register } from '../http/register.ts'
import { listNumbers } from './list-numbers.ts'
import { reviseNumbers } from './revise-numbers.ts'

/** The numbers by which typed values are doubted. */
export function plausibilityRoutes(app: FastifyInstance): void {
  register(app, listPlausibility, () => listNumbers(app.shop.pool))
  command(app, revisePlausibility, reviseNumbers)
}
