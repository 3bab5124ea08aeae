import { z } from 'zod'
import { Day, Id, Instant, Line, Text } from '../primitives.ts'
import { everyone, route } from '../route.ts'
import { Duty, PlanFinding, Stage, WorkKind } from './domain-shapes.ts'
import { PartsSpecification } from './engine-shapes.ts'

export const RouteOptions = z.object({
  alignHone: z.boolean(),
  deck: z.boolean(),
  oversize: z.boolean(),
  crank: z.enum(['grind', 'polish', 'none']),
  newRodBolts: z.boolean(),
  balance: z.boolean(),
  stroked: z.boolean().exactOptional(),
  newGuides: z.boolean().exactOptional(),
  newSeats: z.boolean().exactOptional(),
})

export const IntakeItem = z.object({
  id: Id,
  description: Line(300),
  quantity: z.int().min(1).max(9999),
  condition: Text(500),
  ownedBy: z.enum(['customer', 'shop']),
})

export const JobSummary = z.object({
  id: Id,
  number: z.int(),
  customerName: z.string(),
  engineName: z.string(),
  duty: Duty,
  work: WorkKind,
  promisedOn: Day,
  state: z.enum(['open', 'handed-over']),
  /** Stage of the first operation that is not signed; null when all are. */
  stage: Stage.nullable(),
  operations: z.int(),
  signed: z.int(),
  openFindings: z.int(),
  late: z.boolean(),
})

export const listJobs = route({
  method: 'GET',
  path: '/api/jobs',
  summary: 'Jobs, the nearest promise first; a search matches number, customer and engine',
  who: everyone,
  query: z.object({
    search: Text(120).default(''),
    state: z.enum(['open', 'handed-over', 'all']).default('open'),
    page: z.coerce.number().int().min(1).default(1),
  }),
  answer: z.object({ jobs: z.array(JobSummary), total: z.int(), pageSize: z.int() }),
})

export const openJob = route({
  method: 'POST',
  path: '/api/jobs',
  summary: 'Open a job: engine, duty, work, promised day and what came in; computes its plan and marks its parts',
  who: ['counter', 'owner'],
  status: 201,
  body: z.object({
    id: Id,
    customerId: Id,
    modelId: Id,
    serial: Text(80),
    duty: Duty,
    work: WorkKind,
    wanted: Text(2000),
    notes: Text(2000),
    promisedOn: Day,
    /** Parts that differ from the library's; null takes the library's. */
    parts: PartsSpecification.nullable(),
    options: RouteOptions,
    intake: z.array(IntakeItem).max(100),
  }),
  answer: z.object({ id: Id, number: z.int(), statusPath: z.string(), findings: z.array(PlanFinding) }),
  problems: ['not-found', 'engine-impossible', 'layout-impossible', 'already-exists'],
})

export const JobOperation = z.object({
  key: z.string(),
  title: z.string(),
  stage: Stage,
  benchKind: z.string(),
  minutes: z.int(),
  state: z.enum(['waiting', 'ready', 'under-way', 'signed', 're-opened']),
  within: z.int(),
  notProven: z.int(),
  outside: z.int(),
  notMeasured: z.int(),
  conceded: z.int(),
  toSee: z.int(),
  seen: z.int(),
  openFindings: z.int(),
})

export const Part = z.object({
  id: Id,
  kind: z.string(),
  mark: z.string(),
  description: z.string(),
  lot: z.string(),
  ownedBy: z.enum(['customer', 'shop']),
  place: z.string().nullable(),
  history: z.array(z.object({ place: z.string().nullable(), from: Instant })),
})

export const CustomerNote = z.object({ id: Id, text: z.string(), writtenAt: Instant, writtenBy: z.string() })

export const readJob = route({
  method: 'GET',
  path: '/api/jobs/:number',
  summary: 'One job: who, what, its route, its parts, what came in, what the customer was told',
  who: everyone,
  params: z.object({ number: z.coerce.number().int() }),
  answer: JobSummary.extend({
    customer: z.object({ id: Id, name: z.string(), phone: z.string(), email: z.string() }).nullable(),
    serial: z.string(),
    wanted: z.string(),
    notes: z.string(),
    version: z.int(),
    planRevision: z.int(),
    sealCount: z.int(),
    sealHead: z.string(),
    openedAt: Instant,
    handedOverAt: Instant.nullable(),
    route: z.array(JobOperation),
    parts: z.array(Part),
    intake: z.array(IntakeItem),
    customerNotes: z.array(CustomerNote),
    links: z.array(z.object({ id: Id, path: z.string(), madeAt: Instant, revokedAt: Instant.nullable() })),
  }),
  problems: ['not-found'],
})

export const changeJob = route({
  method: 'PUT',
  path: '/api/jobs/:id',
  summary: 'Change promised day, wishes and notes; If-Match carries the version that was read',
  who: ['counter', 'owner'],
  params: z.object({ id: Id }),
  body: z.object({ promisedOn: Day, wanted: Text(2000), notes: Text(2000) }),
  answer: z.object({ version: z.int() }),
  problems: ['not-found', 'edit-stale', 'version-missing', 'job-closed'],
})

export const tellCustomer = route({
  method: 'POST',
  path: '/api/jobs/:id/customer-notes',
  summary: 'Say something on the customer’s status page',
  who: ['counter', 'owner'],
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({ id: Id, text: Line(2000) }),
  answer: CustomerNote,
  problems: ['not-found'],
})

export const withdrawCustomerNote = route({
  method: 'POST',
  path: '/api/customer-notes/:id/withdrawal',
  summary: 'Take a line off the status page',
  who: ['counter', 'owner'],
  params: z.object({ id: Id }),
  answer: z.object({}),
  problems: ['not-found'],
})

export const handOver = route({
  method: 'POST',
  path: '/api/jobs/:id/handover',
  summary: 'Close the job: every operation signed, nothing open; seals the chain',
  who: ['counter', 'owner'],
  params: z.object({ id: Id }),
  answer: z.object({ sealHead: z.string(), sealCount: z.int() }),
  problems: ['not-found', 'job-not-finished', 'job-closed'],
})

export const reopenJob = route({
  method: 'POST',
  path: '/api/jobs/:id/re-opening',
  summary: 'Open a closed job again, with a reason',
  who: ['owner'],
  params: z.object({ id: Id }),
  body: z.object({ reason: Line(2000) }),
  answer: z.object({}),
  problems: ['not-found', 'body-invalid'],
})

export const readTag = route({
  method: 'GET',
  path: '/api/jobs/:number/tag',
  summary: 'What is printed on the tag: number, names, and a QR code (SVG) of the job’s page, which needs sign-in',
  who: everyone,
  params: z.object({ number: z.coerce.number().int() }),
  answer: z.object({
    number: z.int(),
    customerName: z.string(),
    engineName: z.string(),
    promisedOn: Day,
    address: z.string(),
    qr: z.string().describe('SVG markup'),
  }),
  problems: ['not-found'],
})

export const readPartTags = route({
  method: 'GET',
  path: '/api/jobs/:number/part-tags',
  summary: 'What is printed on the tags of a job’s parts: mark, place, and a QR code (SVG) that opens the part’s next step',
  who: everyone,
  params: z.object({ number: z.coerce.number().int() }),
  answer: z.object({
    parts: z.array(z.object({
      mark: z.string(),
      kind: z.string(),
      place: z.string().nullable(),
      address: z.string(),
      qr: z.string().describe('SVG markup'),
    })),
  }),
  problems: ['not-found'],
})

export const readNextStep = route({
  method: 'GET',
  path: '/api/jobs/:number/next-step',
  summary: 'Where a scanned tag leads: the next step of a job, or of one of its parts, at a bench if it can be done there',
  who: everyone,
  params: z.object({ number: z.coerce.number().int() }),
  query: z.object({ mark: Text(40).default(''), bench: Id.optional() }),
  answer: z.object({
    jobNumber: z.int(),
    /** Null when all that concerns the part, or the job, is signed. */
    step: z.object({ key: z.string(), title: z.string(), benchKind: z.string(), reachable: z.boolean() }).nullable(),
  }),
  problems: ['not-found', 'part-unknown'],
})
