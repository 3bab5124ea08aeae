import { describe, expect, it } from 'vitest'
import { pinInRod, tenth } from '../testing/samples.ts'
import { limitsWords, valueWords } from './requirement-words.ts'

const said = (least: number, greatest = least, requirement = pinInRod) => valueWords({
  requirement: requirement.key, kind: 'outside', least, greatest, uncertainty: 0, guardBand: 0, probability: 0, side: null, missing: [],
  readings: [], remedy: null, advice: null,
}, requirement, 'inch')

describe('what was measured, in words', () => {
  it('is one value, or from the least to the greatest', () => {
    expect(limitsWords(pinInRod, 'inch')).toBe('0.0006 in to 0.0010 in, target 0.0007 in')
    expect([said(7 * tenth), said(4 * tenth, 8 * tenth)]).toEqual(['0.0007 in', '0.0004 in to 0.0008 in'])
  })

  it('never reads as the limit itself where it lies outside by less than the figures show', () => {
    const narrow = { ...pinInRod, limits: { ...pinInRod.limits, low: 1_500, high: 2_500 } }
    expect(said(1_499, 2_000, narrow)).toBe('just under 0.00006 in to 0.00008 in')
    expect(said(1_500, 2_501, narrow)).toBe('0.00006 in to just over 0.00010 in')
  })
})
