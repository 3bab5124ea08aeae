import { domainErrorCodes } from '@tenths/domain'
import type { ErrorCode } from '@tenths/contract'

/** HTTP status of each problem. 401 is kept for *sign in first* alone: a queue that meets it pauses and asks for that. */
const ofTheService = {
  'body-invalid': 400,
  'not-signed-in': 401,
  'not-allowed': 403,
  'other-person': 409,
  'not-found': 404,
  'sign-in-refused': 403,
  'device-unknown': 403,
  'pin-wrong': 403,
  'pin-locked': 429,
  'pin-missing': 409,
  'second-person-needed': 422,
  'same-person-twice': 422,
  'key-missing': 400,
  'key-reused': 422,
  'edit-stale': 412,
  'version-missing': 428,
  'job-closed': 409,
  'job-not-finished': 409,
  'operation-changed': 409,
  'operation-not-reachable': 409,
  'operation-not-complete': 409,
  'operation-unknown': 404,
  'operation-signed': 409,
  'part-unknown': 422,
  'place-unknown': 422,
  'pass-not-latest': 409,
  'reading-not-latest': 409,
  'point-taken': 409,
  'gauge-out-of-date': 422,
  'gauge-unfit': 422,
  'value-implausible': 422,
  'finding-decided': 409,
  'already-exists': 409,
  'setup-done': 409,
  'too-many-tries': 429,
  busy: 503,
  unexpected: 500,
} as const

/** What the domain refuses is well-formed and impossible: 422 throughout. */
const ofTheDomain = Object.fromEntries(domainErrorCodes.map((code) => [code, 422]))

export const statusOfCode = { ...ofTheDomain, ...ofTheService } as Readonly<Record<ErrorCode, number>>
