import { applySuggestion as applySuggestionRoute, readTrialFit as readTrialFitRoute } from '@tenths/contract'
import type { FastifyInstance } from 'fastify'
import { command } from '../commands/command.ts'
import { register } from '../http/register.ts'
import { applySuggestion } from './apply-suggestion.ts'
import { readTrialFit } from './read-trial-fit.ts'

/** The trial fit of a job: looked at by everybody of the shop, applied by who works on it. */
export function trialFitRoutes(app: FastifyInstance): void {
  register(app, readTrialFitRoute, (_context, { params }) => readTrialFit(app.shop.pool, params.number))
  command(app, applySuggestionRoute, applySuggestion)
}
