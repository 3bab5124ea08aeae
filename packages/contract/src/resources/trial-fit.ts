import { fitStandings, forecastBases } from '@tenths/domain'
import { z } from 'zod'
import { BaseValue, Id, Line } from '../primitives.ts'
import { everyone, route } from '../route.ts'
import { Duty, Requirement, Verdict, VerdictKind } from './domain-shapes.ts'

const FitValue = z.object({ kind: VerdictKind, least: BaseValue, greatest: BaseValue })

/** Distances from the target, margins to the nearest limit, negative beyond it. */
const Pairing = z.object({ worstDistance: BaseValue, sumOfDistances: BaseValue, leastMargin: BaseValue, outside: z.int() })

/** A step that a change opens again. */
const OpenedAgain = z.object({ key: z.string(), title: z.string() })

export const TrialFitLine = z.object({
  requirement: Requirement,
  standing: z.enum(fitStandings),
  basis: z.enum(forecastBases),
  verdict: Verdict,
  /** What the drawing spoke for, feature and figure. */
  assumed: z.array(z.string()),
  /** The step ahead that will cut it right. */
  cutAt: z.string().nullable(),
  /** The step at which it is judged. */
  judgedAt: OpenedAgain.nullable(),
})

export const Suggestion = z.object({
  /** Names exactly this suggestion, figures and all: it is gone when any of them changes. */
  key: z.string(),
  title: z.string(),
  moves: z.array(z.object({ partId: Id, mark: z.string(), from: z.string(), to: z.string(), marking: z.string() })),
  fits: z.array(z.object({ requirement: z.string(), title: z.string(), before: FitValue, after: FitValue })),
  before: Pairing,
  after: Pairing,
  measureAgain: z.array(z.string()),
  reopens: z.array(OpenedAgain),
})

export const readTrialFit = route({
  method: 'GET',
  path: '/api/jobs/:number/trial-fit',
  summary: 'Will it go together? Every fit from what is measured and the drawing for the rest, conflicts first; better places for parts',
  who: everyone,
  params: z.object({ number: z.coerce.number().int() }),
  answer: z.object({
    job: z.object({
      id: Id, number: z.int(), engineName: z.string(), duty: Duty, state: z.enum(['open', 'handed-over']), planRevision: z.int(),
    }),
    lines: z.array(TrialFitLine),
    counts: z.record(z.enum(fitStandings), z.int()),
    suggestions: z.array(Suggestion),
  }),
  problems: ['not-found'],
})

export const applySuggestion = route({
  method: 'POST',
  path: '/api/jobs/:id/trial-fit/suggestions',
  summary: 'Put the parts where a suggestion of the trial fit has them, all at once; signatures that relied on them re-open',
  who: ['machinist', 'owner'],
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({ suggestion: Line(80) }),
  answer: z.object({ reopened: z.array(OpenedAgain), markings: z.array(z.string()) }),
  problems: ['not-found', 'job-closed', 'edit-stale'],
})
