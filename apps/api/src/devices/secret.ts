import { createHash, randomBytes } from 'node:crypto'

/** A secret of 256 random bits that a tablet keeps in its cookie. */
export function newSecret(): string {
  return randomBytes(32).toString('base64url')
}

/**
 * What the table holds of a tablet's secret or of a one-time code. One round of SHA-256 hides the secret for good; the
 * code, of 49 bits, lapses long before anybody finds it from its hash.
 */
export function hashOfSecret(secret: string): string {
  return createHash('sha256').update(secret).digest('hex')
}
