import { DomainError } from '../errors.ts'

/** One metre: anything longer is a slip of the decimal point on any engine that a shop lifts. */
const LONGEST = 1_000_000_000

/**
 * @throws DomainError `engine-impossible` with the field, as a path such as `engine.bore`, and a sentence.
 */
export function refuse(field: string, sentence: string): never {
  throw new DomainError('engine-impossible', sentence, field)
}

/** Refuses a length that is not a whole number of nanometres greater than 0 and at most 1 m. */
export function requireLength(value: number, field: string): void {
  if (!Number.isSafeInteger(value) || value <= 0 || value > LONGEST) {
    refuse(field, 'This length must be greater than zero and at most a metre.')
  }
}
