import { z } from 'zod'
import { Id, Instant, Line, Pin } from '../primitives.ts'
import { everyone, route } from '../route.ts'
import { QueueEntry } from './benches.ts'
import { DeviceHere, SignedInPerson } from './people.ts'

/** Ten characters without those that look alike: 49 bits, for a quarter of an hour and one tablet. */
export const deviceCodeAlphabet = '23456789ABCDEFGHJKMNPQRSTUVWXYZ'
export const deviceCodeLength = 10
const Code = z.string().regex(new RegExp(`^[${deviceCodeAlphabet}]{${deviceCodeLength}}$`), 'Ten letters and digits, as the owner’s desk shows them.')

export const Device = DeviceHere.extend({
  benchName: z.string(),
  /** Whether a tablet has the secret, whether it still waits for one, or whether its code lapsed unused. */
  state: z.enum(['in-use', 'waits', 'lapsed']),
  registeredAt: Instant,
  codeUntil: Instant.nullable(),
  /** Who has it in hand, and until when at most. */
  heldBy: z.string().nullable(),
  heldUntil: Instant.nullable(),
})

export const listDevices = route({
  method: 'GET',
  path: '/api/devices',
  summary: 'Bench devices that are not revoked, and who has each in hand',
  who: ['owner'],
  answer: z.object({ devices: z.array(Device) }),
})

export const registerDevice = route({
  method: 'POST',
  path: '/api/devices',
  summary: 'Register a shared tablet of a bench; the caller draws the one-time code that is typed on the tablet',
  who: ['owner'],
  status: 201,
  body: z.object({ id: Id, name: Line(80), benchId: Id, secret: Code }),
  answer: Device,
  problems: ['already-exists', 'not-found'],
})

export const renewDeviceCode = route({
  method: 'POST',
  path: '/api/devices/:id/code',
  summary: 'A new one-time code for a device whose tablet lost its secret; the old secret counts until the code is used',
  who: ['owner'],
  params: z.object({ id: Id }),
  body: z.object({ secret: Code }),
  answer: Device,
  problems: ['not-found', 'already-exists'],
})

export const revokeDevice = route({
  method: 'POST',
  path: '/api/devices/:id/revocation',
  summary: 'Revoke a device at once: whoever has it in hand is signed out',
  who: ['owner'],
  params: z.object({ id: Id }),
  answer: z.object({}),
  problems: ['not-found'],
})

export const enrolDevice = route({
  method: 'POST',
  path: '/api/device/enrolment',
  summary: 'Turn this browser into the bench device whose one-time code it knows; ends the session it came with',
  who: 'anyone',
  mutation: 'session',
  body: z.object({ secret: Code }),
  answer: DeviceHere,
  problems: ['not-found', 'too-many-tries'],
})

export const readDevice = route({
  method: 'GET',
  path: '/api/device',
  summary: 'The bench device that this browser is, if any: who may take it over, and what waits at its bench',
  who: 'anyone',
  answer: z.object({
    device: DeviceHere.extend({ benchName: z.string(), shopName: z.string() }).nullable(),
    people: z.array(z.object({ id: Id, name: z.string() })),
    queue: z.array(QueueEntry),
  }),
})

export const takeOver = route({
  method: 'POST',
  path: '/api/device/take-over',
  summary: 'Take the bench device over with one’s PIN, for a shift; whoever had it in hand is signed out',
  who: 'anyone',
  mutation: 'session',
  body: z.object({ personId: Id, pin: Pin }),
  answer: SignedInPerson,
  problems: ['device-unknown', 'not-allowed', 'pin-wrong', 'pin-locked', 'pin-missing'],
})

export const handBack = route({
  method: 'POST',
  path: '/api/device/hand-back',
  summary: 'Hand the device back: pauses this person’s work and ends the session',
  who: everyone,
  answer: z.object({}),
})
