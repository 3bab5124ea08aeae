import { z } from 'zod'
import { Id, Instant, Line, Pin } from '../primitives.ts'
import { everyone, roles, route } from '../route.ts'

/** A shared tablet as the pages on it know it. */
export const DeviceHere = z.object({ id: Id, name: z.string(), benchId: Id })

export const SignedInPerson = z.object({
  id: Id,
  name: z.string(),
  roles: z.array(z.enum(roles)),
  hasPin: z.boolean(),
  shop: z.object({ name: z.string(), timeZone: z.string(), unit: z.enum(['inch', 'millimetre']), isDemo: z.boolean() }),
  judgeVersion: z.int(),
  /** The bench device on which this session runs; null in a browser of one’s own. */
  device: DeviceHere.nullable(),
})

export const signIn = route({
  method: 'POST',
  path: '/api/sign-in',
  summary: 'Sign in with name and password',
  who: 'anyone',
  mutation: 'session',
  body: z.object({ signInName: Line(80), password: z.string().min(1).max(200) }),
  answer: SignedInPerson,
  problems: ['sign-in-refused', 'too-many-tries'],
})

export const signOut = route({
  method: 'POST',
  path: '/api/sign-out',
  summary: 'End this session',
  who: 'anyone',
  mutation: 'session',
  answer: z.object({}),
})

export const whoAmI = route({
  method: 'GET',
  path: '/api/me',
  summary: 'The signed-in person, or a problem when there is none',
  who: everyone,
  answer: SignedInPerson,
})

export const setUpShop = route({
  method: 'POST',
  path: '/api/setup',
  summary: 'Set the shop up with the one-time link printed at the first start',
  who: 'anyone',
  mutation: 'session',
  body: z.object({
    secret: z.string().min(20).max(200),
    shopName: Line(120),
    timeZone: Line(60),
    unit: z.enum(['inch', 'millimetre']),
    ownerName: Line(120),
    signInName: Line(80),
    password: z.string().min(10, 'Ten characters at least.').max(200),
    pin: Pin,
  }),
  answer: SignedInPerson,
  problems: ['setup-done', 'not-found', 'body-invalid'],
})

export const Colleague = z.object({
  id: Id,
  name: z.string(),
  roles: z.array(z.enum(roles)),
  hasPin: z.boolean(),
})

export const listPeople = route({
  method: 'GET',
  path: '/api/people',
  summary: 'Active people of the shop, for choosing who signs',
  who: everyone,
  answer: z.object({ people: z.array(Colleague) }),
})

export const addPerson = route({
  method: 'POST',
  path: '/api/people',
  summary: 'Add a person with roles, a first password and a PIN',
  who: ['owner'],
  status: 201,
  body: z.object({
    id: Id,
    name: Line(120),
    signInName: Line(80),
    password: z.string().min(10, 'Ten characters at least.').max(200),
    pin: Pin.nullable(),
    roles: z.array(z.enum(roles)).min(1),
  }),
  answer: Colleague,
  problems: ['already-exists'],
})

export const changeMyPin = route({
  method: 'PUT',
  path: '/api/me/pin',
  summary: 'Choose a new PIN, with the password as proof',
  who: everyone,
  body: z.object({ password: z.string().min(1).max(200), pin: Pin }),
  answer: z.object({}),
  problems: ['sign-in-refused'],
})

/** A person whose PIN is refused somewhere after five wrong ones. */
export const PinLock = z.object({
  personId: Id,
  personName: z.string(),
  /** Names the device for the unlocking; all browsers of a person count as one. */
  device: z.string(),
  /** The bench device; null for browsers. */
  deviceName: z.string().nullable(),
  since: Instant,
  until: Instant,
})

export const listPinLocks = route({
  method: 'GET',
  path: '/api/pin-locks',
  summary: 'Whose PIN is locked at the moment, where, since when and until when',
  who: ['owner'],
  answer: z.object({ locks: z.array(PinLock) }),
})

export const unlockPin = route({
  method: 'POST',
  path: '/api/people/:id/pin-unlocking',
  summary: 'Let a person try again at once on the device where five wrong PINs locked them',
  who: ['owner'],
  params: z.object({ id: Id }),
  body: z.object({ device: Line(80) }),
  answer: z.object({}),
  problems: ['not-found'],
})
