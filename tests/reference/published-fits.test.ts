import { describe, expect, it } from 'vitest'
import { parseLength } from '../../packages/domain/src/index.ts'
import { judgePair, type PairToJudge } from './support.ts'

/**
 * Published fits, limits of hole and shaft given literally. Tolerance 0: inches to five decimals and microns
 * are whole nanometres, so the clearance must come out to the nanometre. Each fit is judged at both of its
 * extremes (within), and one gauge step past each (outside).
 */
interface PublishedFit {
  readonly name: string
  readonly source: string
  readonly unit: 'inch' | 'millimetre'
  readonly hole: readonly [string, string]
  readonly shaft: readonly [string, string]
  /** Least and greatest clearance as published; an interference is negative. */
  readonly clearance: readonly [string, string]
  /** A hole just too small and one just too large for the clearance. */
  readonly past: readonly [string, string]
}

const published: readonly PublishedFit[] = [
  {
    name: '25 H7/g6', unit: 'millimetre',
    source: 'ISO 286-2 deviations as printed in Aeronautical Engineer’s Data Book, table 12.6, p. 227 (BS 4500 data)',
    hole: ['25.000', '25.021'], shaft: ['24.980', '24.993'], clearance: ['0.007', '0.041'], past: ['24.999', '25.022'],
  },
  {
    name: '50 H7/p6', unit: 'millimetre',
    source: 'ISO 286-2 fit as printed on rulesofthumb.info, limits and fits: interference 1 to 42 µm',
    hole: ['50.000', '50.025'], shaft: ['50.026', '50.042'], clearance: ['−0.042', '−0.001'], past: ['49.999', '50.026'],
  },
  {
    name: 'pin in piston', unit: 'inch', source: 'US Army TM 5-6115-545-34, read as page text',
    hole: ['1.5014', '1.5016'], shaft: ['1.5011', '1.5013'], clearance: ['0.0001', '0.0005'], past: ['1.5013', '1.5017'],
  },
  {
    name: 'pin in rod', unit: 'inch', source: 'US Army TM 5-6115-584-34, read as page text',
    hole: ['0.9903', '0.9906'], shaft: ['0.9899', '0.9901'], clearance: ['0.0002', '0.0007'], past: ['0.9902', '0.9907'],
  },
  {
    name: 'pin in rod bushing', unit: 'inch', source: 'US Army TM 5-3825-225-14&P, read as page text',
    hole: ['1.06315', '1.0632'], shaft: ['1.0625', '1.0627'], clearance: ['0.00045', '0.0007'],
    past: ['1.06314', '1.06321'],
  },
]

describe.each(published)('$name ($source)', ({ unit, hole, shaft, clearance, past }) => {
  const pair: PairToJudge = { unit, limits: { low: clearance[0], high: clearance[1] } }
  const [low, high] = clearance.map((text) => parseLength(text, unit))

  it('closes to the nanometre at its tightest and its loosest, both within', () => {
    expect(judgePair(pair, hole[0], shaft[1])).toMatchObject({ kind: 'within', least: low, greatest: low })
    expect(judgePair(pair, hole[1], shaft[0])).toMatchObject({ kind: 'within', least: high, greatest: high })
  })
  it('is outside one step past either end', () => {
    expect(judgePair(pair, past[0], shaft[1])).toMatchObject({ kind: 'outside', side: 'low' })
    expect(judgePair(pair, past[1], shaft[0])).toMatchObject({ kind: 'outside', side: 'high' })
  })
})
