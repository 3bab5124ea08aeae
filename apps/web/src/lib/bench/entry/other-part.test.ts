import { describe, expect, it } from 'vitest'
import { otherPart } from './other-part.ts'

const sheet = {
  placed: [
    { place: 'rod/3', partId: 'a', mark: 'R3' }, { place: 'rod/5', partId: 'b', mark: 'R7' },
    { place: 'block', partId: 'c', mark: 'B1' }, { place: 'piston-pin/5', partId: 'd', mark: 'PN5' },
  ],
}
const doubt = (mark: string | null, place: string) => {
  const found = otherPart(sheet, mark, { place, feature: 'small-end' })
  return found && `${found.outcome}: ${found.sentence}`
}

describe('a value typed after a tag was scanned', () => {
  it('goes in without a word when it is of that part, or no part’s tag was scanned', () => {
    expect(doubt('R3', 'rod/3')).toBeNull()
    expect(doubt('r3', 'rod/3')).toBeNull()
    expect(doubt(null, 'rod/5')).toBeNull()
    expect(doubt('R99', 'rod/5')).toBeNull()
  })
  it('is blocked when it is of another part of that kind, by the numbers of their places', () => {
    const sentence = 'block: This is number 5, and the scanned tag is of number 3: which part is on the bench?'
    expect(doubt('R3', 'rod/5')).toBe(sentence)
    // the rod marked R7 sits in cylinder 5
    expect(doubt('R7', 'rod/5')).toBeNull()
    expect(doubt('R7', 'rod/3')).toContain('This is number 3, and the scanned tag is of number 5')
  })
  it('is not held against a part of another kind, or without a number', () => {
    expect(doubt('R3', 'piston-pin/5')).toBeNull()
    expect(doubt('B1', 'rod/5')).toBeNull()
    expect(doubt('R3', 'block')).toBeNull()
  })
})
