import { DomainError } from '../errors.ts'

/** What canonical text can hold: plain JSON. */
export type Json =
  null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json | undefined }

/**
 * One text for one value, whatever the order in which its keys were written: keys by UTF-16 code unit, no
 * blanks, strings and numbers as JSON.stringify writes them (RFC 8785). A key without a value is left out.
 * @throws DomainError `value-out-of-range` for a number that JSON cannot hold
 */
export function canonicalJson(value: Json): string {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    throw new DomainError('value-out-of-range', `${value} cannot be written down.`)
  }
  if (value === null || typeof value !== 'object') return JSON.stringify(value)
  if (isList(value)) return `[${value.map(canonicalJson).join(',')}]`
  const members = Object.entries(value)
    .filter((entry): entry is [string, Json] => entry[1] !== undefined)
    .sort(([one], [other]) => (one < other ? -1 : 1))
  return `{${members.map(([key, member]) => `${JSON.stringify(key)}:${canonicalJson(member)}`).join(',')}}`
}

function isList(
  value: readonly Json[] | { readonly [key: string]: Json | undefined },
): value is readonly Json[] {
  return Array.isArray(value)
}
