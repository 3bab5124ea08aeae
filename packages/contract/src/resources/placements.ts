import { z } from 'zod'
import { Id, Line, Text } from '../primitives.ts'
import { everyone, route } from '../route.ts'

export const placeParts = route({
  method: 'POST',
  path: '/api/jobs/:id/placements',
  summary: 'Put parts in places, together (a swap is one call); signatures that relied on them re-open',
  who: ['machinist', 'owner'],
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({
    reason: Line(500),
    moves: z.array(z.object({ id: Id, partId: Id, place: Line(80).nullable() })).min(1).max(40),
  }),
  answer: z.object({ reopened: z.array(z.object({ key: z.string(), title: z.string() })) }),
  problems: ['not-found', 'job-closed', 'part-unknown', 'place-unknown'],
})

export const addPart = route({
  method: 'POST',
  path: '/api/jobs/:id/parts',
  summary: 'Add a part, in a place when one is named: a replacement starts with no readings',
  who: everyone,
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({
    id: Id,
    placementId: Id,
    mark: Line(40),
    description: Text(200),
    lot: Text(80),
    ownedBy: z.enum(['customer', 'shop']),
    place: Line(80),
    reason: Line(500),
  }),
  answer: z.object({ reopened: z.array(z.object({ key: z.string(), title: z.string() })) }),
  problems: ['not-found', 'job-closed', 'place-unknown', 'already-exists'],
})
