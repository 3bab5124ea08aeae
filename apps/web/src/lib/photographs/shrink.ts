import { MOST_PHOTOGRAPH_BYTES } from '@tenths/contract'
import { NotTaken } from './not-taken.ts'

/** Longest side of what is kept, in dots: enough to see a crack, small enough for a slow line. */
const LONGEST_SIDE = 1600
/** Tried one after the other until the file is small enough. */
const qualities = [0.85, 0.7, 0.5] as const

/** A file that no browser can read as a picture. */
export class NoPicture extends NotTaken {
  constructor() {
    super('This file is no photograph that can be read here. Choose another.')
  }
}

/** Width and height of what is kept: the same shape, its longest side no longer than allowed. */
export function keptSize(width: number, height: number, longest: number = LONGEST_SIDE): { width: number; height: number } {
  const factor = Math.min(1, longest / Math.max(width, height))
  return { width: Math.max(1, Math.round(width * factor)), height: Math.max(1, Math.round(height * factor)) }
}

/**
 * Draws a photograph anew, smaller and the right way up. What the camera wrote into the file about place, time and
 * device stays behind, because only the picture is drawn.
 * @throws NoPicture
 */
export async function shrink(file: Blob): Promise<Blob> {
  let picture: ImageBitmap
  try {
    picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
  } catch {
    throw new NoPicture()
  }
  const { width, height } = keptSize(picture.width, picture.height)
  const canvas = Object.assign(document.createElement('canvas'), { width, height })
  canvas.getContext('2d')?.drawImage(picture, 0, 0, width, height)
  picture.close()
  for (const quality of qualities) {
    const drawn = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality))
    if (drawn !== null && drawn.size <= MOST_PHOTOGRAPH_BYTES) return drawn
  }
  throw new NoPicture()
}

/** The bytes of a file as base64 text. */
export async function base64Of(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer())
  let text = ''
  for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000))
  return btoa(text)
}
