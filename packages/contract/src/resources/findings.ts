import { z } from 'zod'
import { BaseValue, Id, Instant, Line, Text } from '../primitives.ts'
import { everyone, route } from '../route.ts'
import { Photograph } from './photographs.ts'

export const findingDecisions = ['concession', 'rework', 'replace', 'scrap'] as const

export const Finding = z.object({
  id: Id,
  jobId: Id,
  jobNumber: z.int(),
  engineName: z.string(),
  operationKey: z.string().nullable(),
  operationTitle: z.string().nullable(),
  requirementKey: z.string().nullable(),
  source: z.enum(['plan', 'judge', 'person']),
  title: z.string(),
  sentence: z.string(),
  stops: z.boolean(),
  state: z.enum(['open', 'decided', 'withdrawn']),
  raisedBy: z.string().nullable(),
  raisedAt: Instant,
  photographs: z.array(Photograph),
  decision: z
    .object({
      decision: z.enum(findingDecisions),
      reason: z.string(),
      low: BaseValue.nullable(),
      high: BaseValue.nullable(),
      by: z.string(),
      at: Instant,
    })
    .nullable(),
})

export const listFindings = route({
  method: 'GET',
  path: '/api/findings',
  summary: 'Findings of the shop, the oldest open first',
  who: ['owner'],
  query: z.object({ state: z.enum(['open', 'decided']).default('open') }),
  answer: z.object({ findings: z.array(Finding) }),
})

export const raiseFinding = route({
  method: 'POST',
  path: '/api/jobs/:id/findings',
  summary: 'Ask the owner to decide: about a requirement that is outside or not proven, or about anything seen',
  who: everyone,
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({
    id: Id,
    operationKey: Line(80).nullable(),
    requirementKey: Line(120).nullable(),
    title: Line(200),
    sentence: Text(2000),
    stops: z.boolean(),
    raisedBy: Id.exactOptional().describe('Who found it: when somebody else is signed in by now, it is refused.'),
    deviceAt: Instant.exactOptional(),
  }),
  answer: Finding,
  problems: ['not-found', 'other-person', 'job-closed', 'operation-unknown', 'already-exists'],
})

export const decideFinding = route({
  method: 'POST',
  path: '/api/findings/:id/decision',
  summary: 'Decide: a concession covers the requirement for an interval of values; the others send the part back',
  who: ['owner'],
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({
    decision: z.enum(findingDecisions),
    reason: z.string().trim().min(3, 'Say why in a few words.').max(2000),
    /** Values a concession covers; null takes what was measured. */
    low: BaseValue.nullable(),
    high: BaseValue.nullable(),
  }),
  answer: Finding,
  problems: ['not-found', 'finding-decided', 'job-closed', 'value-out-of-range'],
})
