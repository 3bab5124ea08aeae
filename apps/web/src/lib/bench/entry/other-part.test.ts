import { describe, expect, it } from 'vitest'
import { otherPart } from './other-part.ts'

const sheet = {
  placed: [
    { place: 'rod/3', partId: 'a', mark: 'R3' }, { place: 'rod/5', partId: 'b', mark: 'R7' },
    { place: 'block', partId: 'c', mark: 'B1' }, { place: 'piston-pin/5', partId: 'd', mark: 'PN5' },
  ],
}
const doubts = (mark: string | null, place: string) =>
  otherPart(sheet, mark, { place, feature: 'small-end' }, 'inch').map(({ outcome, sentence }) => `${outcome}: ${sentence}`)

describe('a value typed after a tag was scanned', () => {
  it('goes in without a word when it is of that part, or no part’s tag was scanned', () => {
    expect(doubts('R3', 'rod/3')).toEqual([])
    expect(doubts('r3', 'rod/3')).toEqual([])
    expect(doubts(null, 'rod/5')).toEqual([])
    expect(doubts('R99', 'rod/5')).toEqual([])
  })
  it('is blocked when it is of another part of that kind, by the numbers of their places', () => {
    const sentence = 'block: This is number 5, and the scanned tag is of number 3: which part is on the bench?'
    expect(doubts('R3', 'rod/5')).toEqual([sentence])
    // the rod marked R7 sits in cylinder 5
    expect(doubts('R7', 'rod/5')).toEqual([])
    expect(doubts('R7', 'rod/3')[0]).toContain('This is number 3, and the scanned tag is of number 5')
  })
  it('is not held against a part of another kind, or without a number', () => {
    expect(doubts('R3', 'piston-pin/5')).toEqual([])
    expect(doubts('B1', 'rod/5')).toEqual([])
    expect(doubts('R3', 'block')).toEqual([])
  })
})
