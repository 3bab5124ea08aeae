import { domainErrorCodes } from '@tenths/domain'
import { z } from 'zod'

/** Codes of the service itself; the domain's own codes travel beside them unchanged. */
export const serviceErrorCodes = [
  'body-invalid',
  'not-signed-in',
  'not-allowed',
  'other-person',
  'not-found',
  'sign-in-refused',
  'device-unknown',
  'pin-wrong',
  'pin-locked',
  'pin-missing',
  'second-person-needed',
  'same-person-twice',
  'key-missing',
  'key-reused',
  'edit-stale',
  'version-missing',
  'job-closed',
  'job-not-finished',
  'operation-changed',
  'operation-not-reachable',
  'operation-not-complete',
  'operation-unknown',
  'operation-signed',
  'part-unknown',
  'place-unknown',
  'pass-not-latest',
  'reading-not-latest',
  'point-taken',
  'gauge-out-of-date',
  'gauge-unfit',
  'value-implausible',
  'finding-decided',
  'already-exists',
  'setup-done',
  'too-many-tries',
  'busy',
  'unexpected',
] as const

export const errorCodes = [...serviceErrorCodes, ...domainErrorCodes] as const
export type ErrorCode = (typeof errorCodes)[number]

/** RFC 9457 problem details, with a code for programs and the field to blame. */
export const Problem = z.object({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string().describe('A sentence that a machinist understands.'),
  code: z.enum(errorCodes),
  field: z.string().optional().describe('Path of the field to blame, such as `readings.3.typed`.'),
  fields: z.array(z.object({ field: z.string(), detail: z.string() })).optional(),
  requestId: z.string(),
})
export type Problem = z.infer<typeof Problem>
