import canonicalize from 'canonicalize'
import { createHash } from 'node:crypto'

/** Fields that are never hashed: six digits fall to a fast hash in a second. */
const secretFields: ReadonlySet<string> = new Set(['pin', 'password', 'secret'])

/** SHA-256 of validated input as canonical JSON (RFC 8785), PINs and passwords cut out at every depth. */
export function hashOfInput(input: unknown): string {
  return createHash('sha256').update(canonicalize(withoutSecrets(input)) ?? '').digest('hex')
}

function withoutSecrets(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutSecrets)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value).filter(([name]) => !secretFields.has(name)).map(([name, inner]) => [name, withoutSecrets(inner)]),
  )
}
