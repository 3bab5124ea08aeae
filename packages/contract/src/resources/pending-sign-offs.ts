import { z } from 'zod'
import { DeviceOffset, Id, Instant, Line, Pin } from '../primitives.ts'
import { everyone, route } from '../route.ts'

/** A step that was marked as signed without a network: no signature yet, until its people confirm it. */
export const PendingSignOff = z.object({
  id: Id,
  jobId: Id,
  jobNumber: z.int(),
  operationKey: z.string(),
  title: z.string(),
  /** By the device's own clock. */
  signedAt: Instant,
  /** Everybody whose signature it wants, who marked it first. */
  signers: z.array(z.object({ id: Id, name: z.string(), confirmed: z.boolean() })),
  state: z.enum(['to-confirm', 'sign-again']),
  /** Why it is to be signed again. */
  reason: z.string().nullable(),
})

export const markSigned = route({
  method: 'POST',
  path: '/api/jobs/:id/pending-sign-offs',
  summary: 'Mark a step as signed without a PIN, because it was done without a network: it waits until its people confirm it',
  who: everyone,
  status: 201,
  params: z.object({ id: Id }),
  body: z.object({
    id: Id,
    operationKey: Line(80),
    definitionHash: Line(80),
    signedBy: Id.describe('Who marked it: when somebody else is signed in by now, it is refused.'),
    signers: z.array(Id).min(1).max(2),
    /** The readings that it relied on: each must still count when it is confirmed. */
    readings: z.array(Id).max(4_000),
    deviceAt: Instant,
    /** Milliseconds by which the server’s clock was ahead at their last contact; null when that is not known. */
    deviceOffset: DeviceOffset,
  }),
  answer: PendingSignOff,
  problems: ['not-found', 'other-person', 'job-closed', 'operation-unknown', 'same-person-twice'],
})

export const listPendingSignOffs = route({
  method: 'GET',
  path: '/api/pending-sign-offs',
  summary: 'Steps that wait for this person’s PIN, or that this person is to sign again',
  who: everyone,
  answer: z.object({ pending: z.array(PendingSignOff) }),
})

export const confirmSignOffs = route({
  method: 'POST',
  path: '/api/pending-sign-offs/confirmations',
  summary: 'Confirm with one PIN what was marked as signed: each is sealed if it still fits, or is to be signed again',
  who: everyone,
  body: z.object({ ids: z.array(Id).min(1).max(100), pin: Pin }),
  answer: z.object({
    results: z.array(z.object({
      id: Id,
      jobNumber: z.int(),
      title: z.string(),
      outcome: z.enum(['sealed', 'waits-for-other', 'sign-again']),
      /** Why it is to be signed again. */
      reason: z.string().nullable(),
    })),
  }),
  problems: ['not-found', 'pin-wrong', 'pin-locked', 'pin-missing'],
})

export const putAwayPending = route({
  method: 'POST',
  path: '/api/pending-sign-offs/:id/put-away',
  summary: 'Put a step away that was marked as signed and is not to be confirmed, with a reason',
  who: everyone,
  params: z.object({ id: Id }),
  body: z.object({ reason: Line(500) }),
  answer: z.object({}),
  problems: ['not-found', 'operation-signed'],
})
