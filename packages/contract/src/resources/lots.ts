import { z } from 'zod'
import { Id, Instant, Line, Text } from '../primitives.ts'
import { route } from '../route.ts'

/** A lot or serial as it was typed for a part. */
export const TypedLot = z.object({ lot: z.string(), reason: z.string(), by: z.string(), at: Instant })

/** A place into which a part goes for good, with its lot or serial and every one that was typed before. */
export const LotPlace = z.object({
  place: z.string(),
  partId: Id,
  mark: z.string(),
  /** Empty while nobody has typed one. */
  lot: z.string(),
  history: z.array(TypedLot),
})

export const setLots = route({
  method: 'POST',
  path: '/api/jobs/:id/lots',
  summary: 'Type or scan lots or serials, one for each part; another one than before takes a reason',
  who: ['machinist', 'owner', 'counter'],
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({
    reason: Text(500),
    typedBy: Id.exactOptional().describe('Who typed them: when somebody else is signed in by now, they are refused.'),
    lots: z.array(z.object({ id: Id, partId: Id, lot: Line(80), deviceAt: Instant.exactOptional() })).min(1).max(200),
  }),
  answer: z.object({ reopened: z.array(z.object({ key: z.string(), title: z.string() })) }),
  problems: ['not-found', 'other-person', 'job-closed', 'part-unknown', 'body-invalid', 'already-exists'],
})

export const findLots = route({
  method: 'GET',
  path: '/api/lots',
  summary: 'Where did this lot go? Every part whose lot or serial begins so, in any job, the newest first',
  who: ['owner', 'counter'],
  query: z.object({ search: Text(80).default('') }),
  answer: z.object({
    found: z.array(
      z.object({
        jobNumber: z.int(),
        customerName: z.string(),
        engineName: z.string(),
        handedOverAt: Instant.nullable(),
        kind: z.string(),
        mark: z.string(),
        place: z.string().nullable(),
        lot: z.string(),
        /** Somebody typed another lot for this part later. */
        replaced: z.boolean(),
        by: z.string(),
        at: Instant,
      }),
    ),
    /** There are more than are listed. */
    more: z.boolean(),
  }),
})
