import { plausibilityUnits } from '@tenths/domain'
import { z } from 'zod'
import { Instant, Line } from '../primitives.ts'
import { everyone, route } from '../route.ts'

/** A number by which values are doubted, as it stands. */
export const PlausibilityNumber = z.object({
  /** Its path, such as `neighbour.bore.finished`. */
  key: z.string(),
  title: z.string(),
  unit: z.enum(plausibilityUnits),
  value: z.number(),
  starter: z.number(),
  /** Whoever changed it, when and why; the latest first. */
  changes: z.array(z.object({ from: z.number(), to: z.number(), reason: z.string(), by: z.string(), at: Instant })),
})

/** What one rule asks or blocks, and the numbers that it goes by. */
export const PlausibilityGroup = z.object({
  key: z.string(),
  title: z.string(),
  words: z.string(),
  numbers: z.array(PlausibilityNumber),
})

export const PlausibilityInForce = z.object({
  /** 0 for the starter's numbers. */
  revision: z.int(),
  groups: z.array(PlausibilityGroup),
})

export const listPlausibility = route({
  method: 'GET',
  path: '/api/plausibility',
  summary: 'The numbers by which a typed value is doubted: starter numbers until the owner changes them',
  who: everyone,
  answer: PlausibilityInForce,
})

export const revisePlausibility = route({
  method: 'POST',
  path: '/api/plausibility',
  summary: 'Change numbers by which a typed value is doubted, from now on; one at its starter number is the shop’s own no more',
  who: ['owner'],
  status: 201,
  body: z.object({
    numbers: z.record(z.string().max(80), z.number()).describe('By path. Lengths in nanometres, degrees in thousandths.'),
    reason: Line(300),
    basedOn: z.int().describe('The revision that was looked at; 0 for the starter’s numbers.'),
  }),
  answer: PlausibilityInForce,
  problems: ['rule-unknown', 'edit-stale', 'value-out-of-range'],
})
