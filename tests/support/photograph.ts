import { randomUUID } from 'node:crypto'

/** The smallest grey JPEG, one dot, without anything a camera would add. */
const dot = 'ffd8ffe000104a46494600010100000100010000ffdb004300080606070605080707070909080a0c140d0c0b0b0c1912130f141d1a1f1e1d1a1c1c20242e2720222c231c1c2837292c30313434341f27393d38323c2e333432ffc0000b080001000101011100ffc4001f0000010501010101010100000000000000000102030405060708090a0bffc400b5100002010303020403050504040000017d01020300041105122131410613516107227114328191a1082342b1c11552d1f02433627282090a161718191a25262728292a3435363738393a434445464748494a535455565758595a636465666768696a737475767778797a838485868788898a92939495969798999aa2a3a4a5a6a7a8a9aab2b3b4b5b6b7b8b9bac2c3c4c5c6c7c8c9cad2d3d4d5d6d7d8d9dae1e2e3e4e5e6e7e8e9eaf1f2f3f4f5f6f7f8f9faffda0008010100003f00fbd0ffd9'

export const jpeg = (): Buffer => Buffer.from(dot, 'hex')

/** The same with what a camera writes about place and device. */
export function jpegWithCameraData(): Buffer {
  const block = Buffer.from('Exif\0\0II*\0 where and with what', 'latin1')
  const segment = Buffer.alloc(4)
  segment.writeUInt16BE(0xffe1, 0)
  segment.writeUInt16BE(block.length + 2, 2)
  return Buffer.concat([jpeg().subarray(0, 2), segment, block, jpeg().subarray(2)])
}

/** The body that keeps a photograph of one thing. */
export function photographOf(
  subject: 'finding' | 'observation' | 'inspection' | 'intake-item', subjectKey: string, operationKey: string | null,
  bytes: Buffer = jpeg(),
) {
  return {
    id: randomUUID(), subject, subjectKey, operationKey, caption: `Photograph of ${subjectKey}`,
    data: bytes.toString('base64'),
  }
}
