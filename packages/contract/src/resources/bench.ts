import { materialNames } from '@tenths/domain'
import { z } from 'zod'
import { BaseValue, Day, Id, Instant, Line, Text } from '../primitives.ts'
import { everyone, route } from '../route.ts'
import {
  BenchKind, CylinderOrientation, Duty, FeatureDefinition, Layout, MeasuringState, Operation, Quantity,
  Requirement, RingClock, Stage, Verdict,
} from './domain-shapes.ts'
import { Finding } from './findings.ts'
import { InspectionResult } from './inspections.ts'
import { JobOperation } from './jobs.ts'
import { LotPlace } from './lots.ts'
import { Photograph } from './photographs.ts'
import { PendingSignOff } from './pending-sign-offs.ts'

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

/** Thousandths of a °C. */
const Temperature = z.int().min(-40_000).max(250_000)

/** What a comparator was set to zero on, and how warm that was where it is told. */
export const GaugeSetting = z.object({ size: BaseValue, temperature: Temperature.nullable() })

/** How warm part and room were when the pass was begun; gauges are as warm as the room. */
export const Temperatures = z.object({ part: Temperature, room: Temperature })

export const Reading = z.object({
  id: Id,
  point: z.string(),
  value: BaseValue,
  /** Of feelers, the blade that did not enter; null where none was tried, left out for any other gauge. */
  blades: z.object({ stops: BaseValue.nullable() }).exactOptional(),
  typed: z.string(),
  /** It was unlikely, and whoever typed it stood by it, with a note where it was beyond belief. */
  confirmed: z.boolean(),
  note: z.string().nullable(),
  supersedes: Id.nullable(),
  reason: z.string().nullable(),
  by: z.string(),
  takenAt: Instant,
})

export const Pass = z.object({
  id: Id,
  partId: Id,
  feature: z.string(),
  number: z.int(),
  operationKey: z.string(),
  gaugeId: Id,
  gaugeMark: z.string(),
  /** What the gauge reads, and so the base unit of the values. */
  quantity: Quantity,
  standardUncertainty: z.number(),
  state: z.array(MeasuringState),
  setOn: z.object({ partId: Id, feature: z.string() }).nullable(),
  /** What was in place while it was taken; absent where that was not recorded. */
  beside: z.array(z.object({ partId: Id, feature: z.string().nullable(), pass: z.int() })).exactOptional(),
  setting: GaugeSetting.nullable(),
  temperatures: Temperatures.nullable(),
  /** What its part is made of, so that its readings are corrected to 20 °C; null where they are taken as read. */
  material: z.enum(materialNames).nullable(),
  /** The latest zero check of its gauge that speaks of it; null while the gauge was not put back on its setting. */
  zero: z.object({ deviation: BaseValue, allowed: BaseValue, by: z.string(), checkedAt: Instant }).nullable(),
  /** Its gauge had drifted: it was read, and does not count. */
  isVoid: z.boolean(),
  by: z.string(),
  openedAt: Instant,
  /** All readings, superseded ones included, oldest first. */
  readings: z.array(Reading),
})

export const ObservationState = z.object({
  item: z.string(),
  outcome: z.enum(['seen', 'not-seen', 'not-applicable']),
  note: z.string(),
  /** Since when part and gauge have stood side by side, where the thing asks for it. */
  since: Instant.nullable(),
  by: z.string(),
  observedAt: Instant,
})

export const Concession = z.object({ requirement: z.string(), low: BaseValue, high: BaseValue, reason: z.string(), by: z.string() })

export const SignOff = z.object({
  id: Id,
  sealNumber: z.int(),
  hash: z.string(),
  by: z.array(z.string()),
  /** When it was sealed. */
  signedAt: Instant,
  /** When it was given, by the device's own clock, if that was without a network and it was confirmed later. */
  givenAt: Instant.nullable(),
  reopened: z.object({ cause: z.string(), reason: z.string(), at: Instant }).nullable(),
})

export const readOperation = route({
  method: 'GET',
  path: '/api/jobs/:number/operations/:key',
  summary: 'Everything one step needs at the bench: what to measure and see, what was measured, mates, gauges, verdicts',
  who: everyone,
  params: z.object({ number: z.coerce.number().int(), key: z.string() }),
  answer: z.object({
    job: z.object({
      id: Id,
      number: z.int(),
      engineName: z.string(),
      duty: Duty,
      state: z.enum(['open', 'handed-over']),
      planRevision: z.int(),
    }),
    operation: Operation,
    stage: Stage,
    state: JobOperation.shape.state,
    definitionHash: z.string(),
    judgeVersion: z.int(),
    /** Operations before this one that are not signed yet, and which of them are marked as signed. */
    waitsFor: z.array(z.object({ key: z.string(), title: z.string(), marked: z.boolean() })),
    /** This operation's features and those of mating parts that its requirements name. */
    features: z.array(FeatureDefinition),
    requirements: z.array(Requirement),
    layout: Layout,
    orientation: z.array(CylinderOrientation),
    /** One for each cylinder where the step fits or clocks rings; else none. */
    ringClocks: z.array(RingClock),
    placed: z.array(z.object({ place: z.string(), partId: Id, mark: z.string() })),
    passes: z.array(Pass),
    verdicts: z.array(Verdict),
    gauges: z.array(Gauge),
    /** Nominal bore of the engine, for what goes by it. */
    bore: BaseValue,
    /** What the parts in each place are made of, where their readings can be corrected to 20 °C. */
    materials: z.record(z.string(), z.enum(materialNames)),
    observations: z.array(ObservationState),
    /** Every result of the areas tested here, the oldest first. */
    inspections: z.array(InspectionResult),
    lots: z.array(LotPlace),
    photographs: z.array(Photograph),
    findings: z.array(Finding),
    concessions: z.array(Concession),
    signOffs: z.array(SignOff),
    /** Marked as signed without a network: to be confirmed, or to be signed again. */
    pending: z.array(PendingSignOff),
    work: z.object({ running: z.boolean(), minutes: z.int() }),
  }),
  problems: ['not-found', 'operation-unknown'],
})

/** Work without a network goes on behind a step that is marked as signed. */
const Behind = z.boolean()
  .describe('It was done behind steps that are marked as signed and not confirmed yet: those count as passed here.')

export const takeReadings = route({
  method: 'POST',
  path: '/api/jobs/:id/readings',
  summary: 'Readings of one pass, together: a new pass when `pass` is new, a correction when a reading supersedes one',
  who: ['machinist', 'owner'],
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({
    operationKey: Line(80),
    takenBy: Id.exactOptional().describe('Who typed the values: when somebody else is signed in by now, they are refused.'),
    behind: Behind.exactOptional(),
    pass: z.object({
      id: Id,
      partId: Id,
      feature: Line(80),
      /** 1 for the first measuring, one more for each *measure again*. */
      number: z.int().min(1),
      gaugeId: Id,
      state: z.array(MeasuringState),
      setOn: z.object({ partId: Id, feature: Line(80) }).nullable(),
      setting: GaugeSetting.nullable().exactOptional().describe('What a comparator was set to zero on.'),
      temperatures: Temperatures.nullable().exactOptional(),
    }),
    readings: z
      .array(
        z.object({
          id: Id,
          point: Line(80),
          value: BaseValue,
          typed: Line(40),
          supersedes: Id.nullable(),
          reason: Text(500).nullable(),
          deviceAt: Instant.nullable(),
          blades: z.object({ stops: BaseValue.nullable() }).exactOptional()
            .describe('Feelers: the blade that did not enter; null where none was tried.'),
          confirmed: z.boolean().describe('The machinist looked at an unlikely value and stands by it.'),
          note: Text(500).nullable().exactOptional().describe('Why a value beyond belief is right.'),
        }),
      )
      .min(1)
      .max(400),
  }),
  answer: z.object({
    verdicts: z.array(Verdict),
    /** Operations that were signed and relied on what changed. */
    reopened: z.array(z.object({ key: z.string(), title: z.string() })),
  }),
  problems: [
    'not-found', 'other-person', 'job-closed', 'operation-unknown', 'operation-not-reachable', 'part-unknown', 'feature-unknown', 'point-unknown', 'point-taken',
    'pass-not-latest', 'reading-not-latest', 'gauge-out-of-date', 'gauge-unfit', 'length-too-fine', 'value-implausible',
    'value-out-of-range',
  ],
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
  problems: ['not-found', 'job-closed', 'gauge-unfit', 'value-implausible', 'already-exists', 'length-unreadable', 'length-not-exact'],
})

export const observe = route({
  method: 'POST',
  path: '/api/jobs/:id/observations',
  summary: 'Tick things as seen, not seen or not applicable',
  who: ['machinist', 'owner', 'counter'],
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({
    operationKey: Line(80),
    seenBy: Id.exactOptional().describe('Who saw it: when somebody else is signed in by now, it is refused.'),
    behind: Behind.exactOptional(),
    observations: z
      .array(
        z.object({
          id: Id,
          item: Line(80),
          outcome: z.enum(['seen', 'not-seen', 'not-applicable']),
          note: Text(500),
          /** Since when part and gauge have stood side by side, for a thing that asks for it. */
          since: Instant.nullable().exactOptional(),
          deviceAt: Instant.exactOptional(),
        }),
      )
      .min(1)
      .max(100),
  }),
  answer: z.object({ observations: z.array(ObservationState) }),
  problems: [
    'not-found', 'other-person', 'job-closed', 'operation-unknown', 'operation-not-reachable', 'body-invalid',
    'value-out-of-range',
  ],
})

export const startWork = route({
  method: 'POST',
  path: '/api/jobs/:id/work',
  summary: 'Pause this person’s work on an operation, or go on with it; the first value or tick begins it by itself',
  who: everyone,
  params: z.object({ id: Id }),
  body: z.object({
    id: Id,
    operationKey: Line(80),
    action: z.enum(['start', 'stop']),
    workedBy: Id.exactOptional().describe('Whose clock it is: when somebody else is signed in by now, it is refused.'),
    deviceAt: Instant.exactOptional().describe('When it was turned by the device’s own clock, if that was before now.'),
    deviceOffset: z.int().min(-2_000_000_000).max(2_000_000_000).nullable().exactOptional()
      .describe('Milliseconds by which the server’s clock was ahead at their last contact.'),
  }),
  answer: z.object({ running: z.boolean(), minutes: z.int() }),
  problems: ['not-found', 'other-person', 'job-closed', 'operation-unknown'],
})

export const signOff = route({
  method: 'POST',
  path: '/api/jobs/:id/sign-offs',
  summary: 'Sign an operation with one PIN, or two different people’s where it asks for two; seals it',
  who: everyone,
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({
    id: Id,
    operationKey: Line(80),
    definitionHash: Line(80),
    signatures: z.array(z.object({ personId: Id, pin: z.string().regex(/^\d{6}$/, 'Six digits.') })).min(1).max(2),
  }),
  answer: SignOff,
  problems: [
    'not-found', 'job-closed', 'operation-unknown', 'operation-changed', 'operation-not-reachable', 'operation-not-complete',
    'operation-signed', 'pin-wrong', 'pin-locked', 'pin-missing', 'second-person-needed', 'same-person-twice',
  ],
})

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

