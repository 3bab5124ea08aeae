import { z } from 'zod'
import { BaseValue, Day, Id, Line } from '../primitives.ts'
import { everyone, route } from '../route.ts'
import { Quantity } from './domain-shapes.ts'

export const Gauge = z.object({
  id: Id,
  mark: z.string(),
  name: z.string(),
  kind: z.string(),
  quantity: Quantity,
  resolution: BaseValue,
  analogue: z.boolean(),
  clockwiseIsSmaller: z.boolean(),
  /** Standard uncertainty u of one reading, in the base unit. */
  standardUncertainty: z.number(),
  calibratedUntil: Day,
  retired: z.boolean(),
})

export const listGauges = route({
  method: 'GET',
  path: '/api/gauges',
  summary: 'The shop’s gauges',
  who: everyone,
  answer: z.object({ gauges: z.array(Gauge) }),
})

export const addGauge = route({
  method: 'POST',
  path: '/api/gauges',
  summary: 'Add a gauge',
  who: ['owner'],
  status: 201,
  body: Gauge,
  answer: Gauge,
  problems: ['already-exists'],
})

export const checkZero = route({
  method: 'POST',
  path: '/api/jobs/:id/zero-checks',
  summary: 'What a gauge shows on its setting after it was read: a drifted zero voids what it read since its last good one',
  who: ['machinist', 'owner'],
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({
    id: Id,
    gaugeId: Id,
    deviation: BaseValue,
    typed: Line(40),
    checkedBy: Id.exactOptional().describe('Who put the gauge back on its setting: when somebody else is signed in by now, it is refused.'),
  }),
  answer: z.object({
    hasDrifted: z.boolean(),
    allowed: BaseValue,
    /** How many passes it speaks of. */
    passes: z.int(),
    /** Operations that were signed and relied on what is void now. */
    reopened: z.array(z.object({ key: z.string(), title: z.string() })),
    /** Other jobs on which the same gauge read since its last good zero there: they want a check of their own. */
    alsoRead: z.array(z.object({ jobNumber: z.int(), operationKey: z.string(), operationTitle: z.string() })),
  }),
  problems: ['not-found', 'job-closed', 'other-person', 'gauge-unfit', 'value-implausible', 'already-exists', 'length-unreadable', 'length-not-exact'],
})
