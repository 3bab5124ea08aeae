import type { ErrorCode, Problem } from '@tenths/contract'
import { problemText } from './problem-text.ts'

/** Codes of the pages themselves, for what no answer of the API can say. */
export type ProblemCode = ErrorCode | 'no-network' | 'not-kept' | 'answer-unreadable'

/** A refusal with a sentence for the person, and the fields to blame. */
export class ProblemError extends Error {
  readonly code: ProblemCode
  /** HTTP status; 0 when no answer came, or one that refuses nothing and is not the service’s. */
  readonly status: number
  /** Sentences by field path, such as `intake.2.description`. */
  readonly fields: Readonly<Record<string, string>>
  /** Names this refusal in the server's log. */
  readonly requestId: string | undefined

  constructor(code: ProblemCode, status: number, detail: string, fields: Record<string, string> = {}, requestId?: string) {
    super(problemText(code, detail))
    this.name = 'ProblemError'
    this.code = code
    this.status = status
    this.fields = fields
    this.requestId = requestId
  }

  /** The same fields with other first names, where the page calls them differently than the wire. */
  fieldsUnder(names: Readonly<Record<string, string>>): Record<string, string> {
    return Object.fromEntries(Object.entries(this.fields).map(([path, sentence]) => {
      const [first = '', ...rest] = path.split('.')
      return [[names[first] ?? first, ...rest].join('.'), sentence]
    }))
  }
}

/** The problem that an API answer describes. */
export function problemOf(status: number, body: unknown): ProblemError {
  if (!isProblem(body)) return new ProblemError('answer-unreadable', status, '')
  const fields: Record<string, string> = {}
  if (body.field !== undefined) fields[body.field] = body.detail
  for (const { field, detail } of body.fields ?? []) fields[field] = detail
  return new ProblemError(body.code, status, body.detail, fields, body.requestId)
}

/** No answer came: the network or the server is away, and nobody knows whether the request arrived. */
export function noNetwork(): ProblemError {
  return new ProblemError('no-network', 0, '')
}

function isProblem(body: unknown): body is Problem {
  return typeof body === 'object' && body !== null && 'code' in body && 'detail' in body
}
