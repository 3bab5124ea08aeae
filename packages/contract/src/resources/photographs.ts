import { z } from 'zod'
import { Id, Instant, Line } from '../primitives.ts'
import { everyone, route } from '../route.ts'

/** What a photograph belongs to: a finding, a thing to see, an area that is tested, or a line of the intake list. */
export const photographSubjects = ['finding', 'observation', 'inspection', 'intake-item'] as const

/** Most bytes of one photograph. The page that takes it makes it smaller before it is sent. */
export const MOST_PHOTOGRAPH_BYTES = 1_572_864

/** Longest base64 text of one photograph: four characters for three bytes. */
const MOST_TEXT = Math.ceil(MOST_PHOTOGRAPH_BYTES / 3) * 4

/** A photograph without its bytes: those are at `/api/photographs/:id`, for people of the shop. */
export const Photograph = z.object({
  id: Id,
  operationKey: z.string().nullable(),
  subject: z.enum(photographSubjects),
  subjectKey: z.string(),
  caption: z.string(),
  sha256: z.string(),
  by: z.string(),
  takenAt: Instant,
})

export const keepPhotograph = route({
  method: 'POST',
  path: '/api/jobs/:id/photographs',
  summary: 'Keep a photograph: JPEG or WebP, without what a camera writes into it about place and device',
  who: everyone,
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({
    id: Id,
    subject: z.enum(photographSubjects),
    subjectKey: Line(120),
    /** The step of a thing to see or of an area; for a finding and an intake item the service knows it. */
    operationKey: Line(80).nullable(),
    caption: Line(300),
    takenBy: Id.exactOptional().describe('Who took it: when somebody else is signed in by now, it is refused.'),
    deviceAt: Instant.exactOptional(),
    data: z.base64().min(16).max(MOST_TEXT).describe('The file’s bytes in base64.'),
  }),
  answer: Photograph,
  problems: ['not-found', 'other-person', 'job-closed', 'operation-unknown', 'already-exists', 'body-invalid'],
})

export const listPhotographs = route({
  method: 'GET',
  path: '/api/jobs/:number/photographs',
  summary: 'All photographs of a job, the oldest first',
  who: everyone,
  params: z.object({ number: z.coerce.number().int() }),
  answer: z.object({ photographs: z.array(Photograph) }),
  problems: ['not-found'],
})
