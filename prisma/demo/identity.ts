import { createHash } from 'node:crypto'

/**
 * A UUID that follows from a name (version 8 of RFC 9562, from SHA-256): the same demo row has the same id on every
 * load, and the same command the same key, so that a load which was cut short goes on where it stopped.
 */
export function idOf(...name: readonly (string | number)[]): string {
  const bytes = createHash('sha256').update(['demo', ...name].join('\u001f')).digest().subarray(0, 16)
  bytes[6] = (bytes[6]! & 0x0f) | 0x80
  bytes[8] = (bytes[8]! & 0x3f) | 0x80
  const hex = bytes.toString('hex')
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-')
}
