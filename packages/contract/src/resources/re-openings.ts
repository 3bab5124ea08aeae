import { z } from 'zod'
import { Id, Instant } from '../primitives.ts'
import { everyone, route } from '../route.ts'

/** A signature of the person who asks that somebody else’s change opened again. */
export const ReOpenedSignature = z.object({
  signOffId: Id,
  jobNumber: z.int(),
  operationKey: z.string(),
  title: z.string(),
  reason: z.string(),
  by: z.string(),
  at: Instant,
})

export const listReOpenedSignatures = route({
  method: 'GET',
  path: '/api/me/re-openings',
  summary: 'Signatures of this person that were opened again by somebody else and that they have not been told of yet',
  who: everyone,
  answer: z.object({ reOpenings: z.array(ReOpenedSignature) }),
})

export const seeReOpenedSignatures = route({
  method: 'POST',
  path: '/api/me/re-openings/seen',
  summary: 'This person has read that these signatures are open again',
  who: everyone,
  body: z.object({ signOffIds: z.array(Id).min(1).max(100) }),
  answer: z.object({}),
})
