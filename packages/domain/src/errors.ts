/** Every way in which a pure function of this package can refuse its input. Codes travel to the user unchanged. */
export const domainErrorCodes = [
  'length-unreadable',
  'length-not-exact',
  'length-too-fine',
  'number-unreadable',
  'unit-missing',
  'value-out-of-range',
  'engine-impossible',
  'layout-impossible',
  'point-unknown',
  'feature-unknown',
  'rule-unknown',
  'route-cyclic',
] as const

export type DomainErrorCode = (typeof domainErrorCodes)[number]

/**
 * A refusal with a code for programs, a sentence for a machinist and, where one is to blame, the field.
 * Nothing in this package returns NaN or guesses: it throws one of these.
 */
export class DomainError extends Error {
  readonly code: DomainErrorCode
  readonly field: string | undefined

  constructor(code: DomainErrorCode, message: string, field?: string) {
    super(message)
    this.name = 'DomainError'
    this.code = code
    this.field = field
  }
}
