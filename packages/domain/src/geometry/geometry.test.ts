import { describe, expect, it } from 'vitest'
import { nanometresOf } from '../exact/length.ts'
import { inches, v8 } from '../testing/engines.ts'
import { deckClearance } from './deck-stack.ts'
import { pinEndPlay } from './retainers.ts'

describe('deck clearance', () => {
  it('is deck height less half the stroke, rod and compression height: positive below the deck', () => {
    // 9.025 − (1.750 + 5.700 + 1.550) = 0.025 in
    expect(deckClearance(v8, inches(5.7), inches(1.55))).toBe(inches(0.025))
  })

  it('is negative when the piston stands out of the block', () => {
    expect(deckClearance(v8, inches(5.7), inches(1.58))).toBe(inches(-0.005))
  })

  it('rounds half a stroke to a whole nanometre, half to even', () => {
    const engine = { deckHeight: nanometresOf(100), stroke: nanometresOf(5) }
    expect(deckClearance(engine, nanometresOf(10), nanometresOf(10))).toBe(78)
  })
})

describe('pin end play', () => {
  it('counts four thicknesses of two rings a side: 2.672 − 4 × 0.042 − 2.500 = 0.004 in', () => {
    expect(pinEndPlay({
      outerFlanks: inches(2.672), ringsPerSide: 2, ringThickness: inches(0.042), pinLength: inches(2.5),
    })).toBe(inches(0.004))
  })

  it('is negative when the last ring cannot go in', () => {
    expect(pinEndPlay({
      outerFlanks: inches(2.66), ringsPerSide: 2, ringThickness: inches(0.042), pinLength: inches(2.5),
    })).toBe(inches(-0.008))
  })
})
