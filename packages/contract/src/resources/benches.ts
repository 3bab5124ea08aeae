import { z } from 'zod'
import { Day, Id, Line } from '../primitives.ts'
import { everyone, route } from '../route.ts'
import { BenchKind } from './domain-shapes.ts'
import { JobOperation } from './jobs.ts'

export const Bench = z.object({ id: Id, name: z.string(), kind: BenchKind, waiting: z.int() })

export const listBenches = route({
  method: 'GET',
  path: '/api/benches',
  summary: 'Benches and how many operations wait at each',
  who: everyone,
  answer: z.object({ benches: z.array(Bench) }),
})

export const addBench = route({
  method: 'POST',
  path: '/api/benches',
  summary: 'Add a bench',
  who: ['owner'],
  status: 201,
  body: z.object({ id: Id, name: Line(80), kind: BenchKind }),
  answer: Bench,
  problems: ['already-exists'],
})

export const QueueEntry = JobOperation.extend({
  jobId: Id,
  jobNumber: z.int(),
  engineName: z.string(),
  promisedOn: Day,
  late: z.boolean(),
})

export const readQueue = route({
  method: 'GET',
  path: '/api/benches/:id/queue',
  summary: 'What waits at this bench, in the order it should be done: what can be done first, then what is begun or open again, then the nearest promise',
  who: everyone,
  params: z.object({ id: Id }),
  answer: z.object({ bench: Bench, entries: z.array(QueueEntry) }),
  problems: ['not-found'],
})
