import { materialNames } from '@tenths/domain'
import { z } from 'zod'
import { BaseValue, Behind, DeviceOffset, Id, Instant, Line, Pin, Text } from '../primitives.ts'
import { everyone, route } from '../route.ts'
import { CylinderOrientation, Duty, FeatureDefinition, Layout, Operation, Requirement, RingClock, Stage, Verdict } from './domain-shapes.ts'
import { Finding } from './findings.ts'
import { Gauge } from './gauges.ts'
import { InspectionResult } from './inspections.ts'
import { JobOperation } from './jobs.ts'
import { LotPlace } from './lots.ts'
import { PendingSignOff } from './pending-sign-offs.ts'
import { Photograph } from './photographs.ts'
import { Pass } from './readings.ts'

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
    /** The shop's own numbers of plausibility by their paths; left out where it goes by the starter's. */
    numbers: z.record(z.string(), z.number()).exactOptional(),
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
    deviceOffset: DeviceOffset.exactOptional(),
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
    deviceOffset: DeviceOffset.exactOptional(),
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
    signatures: z.array(z.object({ personId: Id, pin: Pin })).min(1).max(2),
  }),
  answer: SignOff,
  problems: [
    'not-found', 'job-closed', 'operation-unknown', 'operation-changed', 'operation-not-reachable', 'operation-not-complete',
    'operation-signed', 'pin-wrong', 'pin-locked', 'pin-missing', 'second-person-needed', 'same-person-twice',
  ],
})
