import { quantities } from '@tenths/domain'
import { z } from 'zod'
import { Id, Line } from '../primitives.ts'
import { everyone, route } from '../route.ts'
import { CylinderOrientation, Duty, FeatureDefinition, Limits, Operation, PlanFinding, Requirement } from './domain-shapes.ts'
import { EngineSpecification, PartsSpecification } from './engine-shapes.ts'
import { RouteOptions } from './jobs.ts'

export const SheetLimit = z.object({
  fit: z.string(),
  level: z.enum(['part-maker', 'engine-maker']),
  limits: Limits,
  source: Line(200),
})

export const readPlan = route({
  method: 'GET',
  path: '/api/jobs/:number/plan',
  summary: 'Fit sheet and route in force, with the why of every limit',
  who: everyone,
  params: z.object({ number: z.coerce.number().int() }),
  answer: z.object({
    revision: z.int(),
    engine: EngineSpecification,
    parts: PartsSpecification,
    duty: Duty,
    options: RouteOptions,
    sheets: z.array(SheetLimit),
    features: z.array(FeatureDefinition),
    requirements: z.array(Requirement),
    operations: z.array(Operation),
    findings: z.array(PlanFinding),
    orientation: z.array(CylinderOrientation),
  }),
  problems: ['not-found'],
})

const Wish = z.object({
  duty: Duty,
  parts: PartsSpecification,
  options: RouteOptions,
  sheets: z.array(SheetLimit).max(100),
})

const ChangedOperation = z.object({
  key: z.string(),
  title: z.string(),
  change: z.enum(['added', 'removed', 'changed']),
  /** A live signature on it will be re-opened. */
  reopens: z.boolean(),
})

export const previewPlan = route({
  method: 'POST',
  path: '/api/jobs/:id/plan/preview',
  summary: 'What a new plan would change, before it is applied; nothing is stored',
  who: ['owner', 'counter'],
  mutation: 'none',
  params: z.object({ id: Id }),
  body: Wish,
  answer: z.object({ changes: z.array(ChangedOperation), findings: z.array(PlanFinding) }),
  problems: ['not-found', 'engine-impossible', 'job-closed'],
})

export const revisePlan = route({
  method: 'POST',
  path: '/api/jobs/:id/plan',
  summary: 'Apply a new plan: readings stay; exactly the operations whose definition changed re-open',
  who: ['owner'],
  status: 201,
  params: z.object({ id: Id }),
  body: Wish.extend({ reason: Line(2000), basedOn: z.int() }),
  answer: z.object({ revision: z.int(), changes: z.array(ChangedOperation) }),
  problems: ['not-found', 'engine-impossible', 'job-closed', 'edit-stale'],
})

export const Rule = z.object({
  fit: z.string(),
  title: z.string(),
  /** What its limits are limits of. */
  quantity: z.enum(quantities),
  revision: z.int(),
  level: z.enum(['shop', 'starter']),
  parameters: z.array(z.object({ name: z.string(), title: z.string(), unit: z.string(), value: z.number() })),
  source: z.string(),
})

export const listRules = route({
  method: 'GET',
  path: '/api/rules',
  summary: 'The shop’s rules: starter numbers until the owner changes them',
  who: everyone,
  answer: z.object({ rules: z.array(Rule) }),
})

export const reviseRule = route({
  method: 'POST',
  path: '/api/rules/:fit',
  summary: 'A new revision of a rule; open jobs keep theirs until they are planned again',
  who: ['owner'],
  status: 201,
  params: z.object({ fit: z.string() }),
  body: z.object({ parameters: z.record(z.string(), z.number()), source: Line(200), basedOn: z.int() }),
  answer: Rule,
  problems: ['rule-unknown', 'edit-stale', 'value-out-of-range'],
})
