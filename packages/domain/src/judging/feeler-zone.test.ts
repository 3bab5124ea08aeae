import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { nanometresOf } from '../exact/length.ts'
import { parseFeelers } from '../exact/parse-feelers.ts'
import { zoneOfFeelers } from './feeler-zone.ts'
import { zoneOf } from './zones.ts'

const limits = (low: number | null, high: number | null) =>
  ({ low: low === null ? null : low * 25_400, high: high === null ? null : high * 25_400, target: null, adviceLow: null, adviceHigh: null })
const judged = (text: string, low: number | null, high: number | null) => zoneOfFeelers(parseFeelers(text, 'inch'), limits(low, high))

describe('a gap by feelers', () => {
  it('proves a minimum by the blade equal to it, and not by the one before', () => {
    expect(judged('18', 18, null)).toEqual({ kind: 'within', side: null })
    expect(judged('17', 18, null)).toEqual({ kind: 'not-proven', side: 'low' })
    expect(judged('17/18', 18, null)).toEqual({ kind: 'outside', side: 'low' })
    expect(judged('17/19', 18, null)).toEqual({ kind: 'not-proven', side: 'low' })
  })
  it('proves a maximum by the blade equal to it that does not enter', () => {
    expect(judged('18/20', null, 20)).toEqual({ kind: 'within', side: null })
    expect(judged('18/21', null, 20)).toEqual({ kind: 'not-proven', side: 'high' })
    expect(judged('18', null, 20)).toEqual({ kind: 'not-proven', side: 'high' })
    expect(judged('21/22', null, 20)).toEqual({ kind: 'outside', side: 'high' })
    expect(judged('17/21', 18, 20)).toEqual({ kind: 'not-proven', side: 'both' })
  })
  it('never contradicts the gap itself: whatever it is, what is proven is true of it', () => {
    const size = fc.integer({ min: 0, max: 60 })
    fc.assert(fc.property(size, size, size, size, (gap, below, low, width) => {
      const feelers = { enters: nanometresOf(Math.max(0, gap - below)), stops: nanometresOf(gap + 1) }
      const between = { ...limits(null, null), low, high: low + width }
      const { kind } = zoneOfFeelers(feelers, between)
      if (kind !== 'not-proven') expect(zoneOf(gap, gap, between, 0).kind).toBe(kind)
    }))
  })
})
