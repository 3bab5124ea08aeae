export type MediaType = 'image/jpeg' | 'image/webp'

/**
 * What the first bytes say a file is; null for anything but JPEG and WebP. Sources: ITU-T T.81 (SOI marker
 * FF D8, another marker after it); RIFF header with form type WEBP, RFC 9649.
 */
export function mediaTypeOf(bytes: Buffer): MediaType | null {
  if (bytes.length > 3 && bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'image/jpeg'
  const isWebp = bytes.length > 12 && bytes.toString('latin1', 0, 4) === 'RIFF' && bytes.toString('latin1', 8, 12) === 'WEBP'
  return isWebp ? 'image/webp' : null
}

/** A JPEG's EXIF stands among its first segments, none of which is longer than this. */
const LONGEST_SEGMENT = 65_536

/** Whether the file still carries what a camera writes about place, time and device. */
export function hasCameraData(bytes: Buffer, type: MediaType): boolean {
  return type === 'image/jpeg'
    ? bytes.subarray(0, 2 * LONGEST_SEGMENT).includes('Exif\0\0', 0, 'latin1')
    : webpChunks(bytes).includes('EXIF')
}

/** Names of the chunks of a WebP file, by their lengths: the same letters inside a picture mean nothing. */
function webpChunks(bytes: Buffer): string[] {
  const names: string[] = []
  for (let at = 12; at + 8 <= bytes.length;) {
    names.push(bytes.toString('latin1', at, at + 4))
    const length = bytes.readUInt32LE(at + 4)
    at += 8 + length + (length % 2)
  }
  return names
}
