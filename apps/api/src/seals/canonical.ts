import { createHash } from 'node:crypto'
import canonicalize from 'canonicalize'

/**
 * A value as canonical JSON text (RFC 8785): keys sorted, no blanks, one way to write each number. What is
 * sealed is this text, kept as text, so that its bytes can be hashed again years later.
 * @throws Error for what JSON cannot say (NaN, a function at the top)
 */
export function canonicalText(value: unknown): string {
  const text = canonicalize(value)
  if (text === undefined) throw new Error('This value has no JSON text.')
  return text
}

/** SHA-256 of a text's UTF-8 bytes, in lower-case hexadecimal. */
export function textHash(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex')
}
