import type { ErrorCode, Problem } from '@tenths/contract'
import { DomainError } from '@tenths/domain'
import { STATUS_CODES } from 'node:http'
import type { ZodError } from 'zod'
import { isBusy } from './busy.ts'
import { statusOfCode } from './status-of-code.ts'

/** A refusal of the service: a code for programs, a sentence for a machinist and, where one is to blame, the field. */
export class ServiceError extends Error {
  override name = 'ServiceError'
  readonly code: ErrorCode
  readonly field: string | undefined
  /** Seconds after which the same request may succeed; sent as Retry-After. */
  readonly retryAfter: number | undefined

  constructor(code: ErrorCode, detail: string, field?: string, retryAfter?: number) {
    super(detail)
    this.code = code
    this.field = field
    this.retryAfter = retryAfter
  }
}

/** Input that does not fit its route's schema, with every field to blame. */
export class InputError extends ServiceError {
  override name = 'InputError'
  readonly fields: readonly { field: string; detail: string }[]

  constructor(error: ZodError) {
    const fields = error.issues.map((issue) => ({ field: issue.path.join('.'), detail: issue.message }))
    const first = fields[0]
    super('body-invalid', first?.detail ?? 'That cannot be read.', first?.field || undefined)
    this.fields = fields
  }
}

/** What a thrown thing answers: RFC 9457 problem details and the seconds after which to try again, if known. */
export function problemOf(error: unknown, requestId: string): { problem: Problem; retryAfter: number | undefined } {
  const known = asServiceError(error)
  const status = statusOfCode[known.code]
  const problem: Problem = {
    // Without a page of its own for each problem, the type is the plain one and its title the status's own phrase.
    type: 'about:blank',
    title: STATUS_CODES[status] ?? 'Problem',
    status,
    detail: known.message,
    code: known.code,
    ...(known.field === undefined ? {} : { field: known.field }),
    ...(known instanceof InputError ? { fields: [...known.fields] } : {}),
    requestId,
  }
  return { problem, retryAfter: known.retryAfter }
}

function asServiceError(error: unknown): ServiceError {
  if (error instanceof ServiceError) return error
  if (error instanceof DomainError) return new ServiceError(error.code, error.message, error.field)
  if (isBusy(error)) {
    return new ServiceError('busy', 'The shop’s records are busy. Nothing was changed; try again in a moment.', undefined, 2)
  }
  if (isTooLargeForItsColumn(error)) return new ServiceError('body-invalid', 'A number here is too large.')
  if (isRefusedByFastify(error)) {
    return error.statusCode === 429
      ? new ServiceError('too-many-tries', 'Too many tries. Wait a minute and try again.', undefined, 60)
      : new ServiceError('body-invalid', 'The request could not be read.')
  }
  return new ServiceError('unexpected', 'Something went wrong on our side. Nothing was changed by this request.')
}

/** Postgres: numeric_value_out_of_range. Numbers that mean something were checked before; this is one that means nothing. */
function isTooLargeForItsColumn(error: unknown): boolean {
  return error instanceof Error && (error as { code?: unknown }).code === '22003'
}

/** Refusals that Fastify and its plugins raise before a handler runs: unreadable JSON, too large, too many. */
function isRefusedByFastify(error: unknown): error is Error & { statusCode: number } {
  if (!(error instanceof Error)) return false
  const status: unknown = (error as { statusCode?: unknown }).statusCode
  return typeof status === 'number' && status >= 400 && status < 500
}
