import { z } from 'zod'
import { Day, Id, Instant } from '../primitives.ts'
import { everyone, route } from '../route.ts'
import { BobweightFigure, BenchKind, Requirement, Stage, Verdict } from './domain-shapes.ts'
import { Finding } from './findings.ts'
import { InspectionResult } from './inspections.ts'
import { JobSummary } from './jobs.ts'
import { TypedLot } from './lots.ts'
import { Photograph } from './photographs.ts'
import { Concession, ObservationState, SignOff } from './operations.ts'
import { Pass } from './readings.ts'

export const readDesk = route({
  method: 'GET',
  path: '/api/desk',
  summary: 'The owner’s view: open work in minutes per bench, jobs at risk, findings to decide',
  who: ['owner'],
  answer: z.object({
    today: Day,
    load: z.array(
      z.object({ benchKind: BenchKind, benches: z.int(), readyMinutes: z.int(), waitingMinutes: z.int(), operations: z.int() }),
    ),
    /** What steps that were timed took on average against their standard, the farthest off first. */
    pace: z.array(z.object({
      key: z.string(), title: z.string(), jobs: z.int(), standardMinutes: z.int(), takenMinutes: z.int(),
      /** Timed often enough that the forecasts reckon with the hours taken. */
      isUsed: z.boolean(),
    })),
    /** Jobs whose remaining minutes do not fit before the promised day, or which are late, worst first. */
    atRisk: z.array(JobSummary.extend({ remainingMinutes: z.int(), workingDaysLeft: z.int(), reason: z.string() })),
    findings: z.array(Finding),
    openJobs: z.int(),
    promisedThisWeek: z.int(),
  }),
})

export const readStatus = route({
  method: 'GET',
  path: '/api/status/:token',
  summary: 'What the customer may see; unknown, lapsed and revoked links answer alike',
  who: 'anyone',
  params: z.object({ token: z.string().min(1).max(200) }),
  answer: z.object({
    shopName: z.string(),
    timeZone: z.string(),
    jobNumber: z.int(),
    engineName: z.string(),
    promisedOn: Day,
    stage: Stage.nullable(),
    stages: z.array(z.object({ stage: Stage, operations: z.int(), signed: z.int() })),
    percent: z.int(),
    finished: z.boolean(),
    notes: z.array(z.object({ text: z.string(), writtenAt: Instant })),
    sealHead: z.string(),
    asOf: Instant,
  }),
  problems: ['not-found'],
})

export const makeStatusLink = route({
  method: 'POST',
  path: '/api/jobs/:id/status-links',
  summary: 'Make another status link',
  who: ['counter', 'owner'],
  status: 201,
  params: z.object({ id: Id }),
  answer: z.object({ id: Id, path: z.string() }),
  problems: ['not-found'],
})

export const revokeStatusLink = route({
  method: 'POST',
  path: '/api/status-links/:id/revocation',
  summary: 'Revoke a status link at once',
  who: ['counter', 'owner'],
  params: z.object({ id: Id }),
  answer: z.object({}),
  problems: ['not-found'],
})

/** One line of the build record: a requirement, what it rests on, and what became of it. */
export const RecordLine = z.object({
  requirement: Requirement,
  verdict: Verdict,
  concession: Concession.nullable(),
})

export const BuildRecord = z.object({
  shopName: z.string(),
  unit: z.enum(['inch', 'millimetre']),
  job: JobSummary,
  serial: z.string(),
  sealCount: z.int(),
  sealHead: z.string(),
  planRevision: z.int(),
  handedOverAt: Instant.nullable(),
  operations: z.array(
    z.object({
      key: z.string(),
      title: z.string(),
      stage: Stage,
      cautions: z.array(z.string()),
      lines: z.array(RecordLine),
      /** Where the crank is spun with bobweights: one for each crankpin. */
      bobweights: z.array(BobweightFigure),
      observations: z.array(ObservationState.extend({ title: z.string() })),
      inspections: z.array(InspectionResult.extend({ title: z.string() })),
      signOffs: z.array(SignOff),
    }),
  ),
  passes: z.array(Pass.extend({ mark: z.string(), place: z.string().nullable() })),
  parts: z.array(z.object({
    mark: z.string(), kind: z.string(), place: z.string().nullable(), lot: z.string(), description: z.string(),
    /** Every lot or serial that was typed for it, the first one first; the last one counts. */
    lots: z.array(TypedLot),
  })),
  photographs: z.array(Photograph),
  findings: z.array(Finding),
  caution: z.string(),
})

export const readBuildRecord = route({
  method: 'GET',
  path: '/api/jobs/:number/build-record',
  summary: 'Every requirement with readings, verdict, gauge, who signed and when, seals, concessions, cautions',
  who: everyone,
  params: z.object({ number: z.coerce.number().int() }),
  answer: BuildRecord,
  problems: ['not-found'],
})

export const readHealth = route({
  method: 'GET',
  path: '/api/health',
  summary: 'Whether the schema is current and the database reachable',
  who: 'anyone',
  answer: z.object({ status: z.literal('ok'), version: z.string(), schema: z.string() }),
  problems: ['busy'],
})
