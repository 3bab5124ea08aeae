import { createHash, createHmac } from 'node:crypto'
import { testSecrets } from './stock.ts'

/** What a million PINs would be looked up by: fast hashes of a PIN, plain, with what lies about, or keyed. */
export function fastHashes(pin: string, personId: string): string[] {
  const inputs = [pin, `${pin}\n`, JSON.stringify(pin), JSON.stringify({ pin }), `${personId}${pin}`, `${personId}:${pin}`, `${pin}${personId}`]
  const algorithms = ['md5', 'sha1', 'sha256', 'sha512']
  const keys = [testSecrets.pinPepper, Buffer.from(testSecrets.pinPepper, 'hex'), personId]
  const digests = algorithms.flatMap((algorithm) => inputs.flatMap((input) => [
    createHash(algorithm).update(input).digest(),
    ...keys.map((secret) => createHmac(algorithm, secret).update(input).digest()),
  ]))
  return digests.flatMap((digest) => [digest.toString('hex'), digest.toString('base64'), digest.toString('base64url')])
}

/** Six digits may lie by chance within a hash or a fraction of a second: a PIN stands by itself. */
export function standsAlone(pin: string): RegExp {
  return new RegExp(`(?<![\\w.])${pin}(?!\\w)`)
}
