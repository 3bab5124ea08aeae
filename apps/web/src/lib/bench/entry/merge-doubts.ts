import type { Doubt } from '@tenths/domain'

/** Several doubts as one question: what is beyond belief first and alone, because it wants a note; null when there is none. */
export function mergeDoubts(found: readonly (Doubt | null)[]): Doubt | null {
  const doubts = found.filter((doubt) => doubt !== null)
  const blocks = doubts.filter(({ outcome }) => outcome === 'block')
  const asked = blocks.length > 0 ? blocks : doubts
  const [first] = asked
  return first === undefined ? null : { ...first, sentence: asked.map(({ sentence }) => sentence).join(' ') }
}
